export async function load() {
  const { default: NeedlesPage } = await import('$lib/view/components/NeedlesPage.svelte');
  return { NeedlesPage };
}
