export async function load() {
  const { default: PatternPage } = await import('$lib/view/components/PatternPage.svelte');
  return { PatternPage };
}
