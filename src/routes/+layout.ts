export const prerender = true;

/** What stands round every page. It comes with the core as a chunk of its own, after the page itself. */
export async function load() {
  const { default: Shell } = await import('$lib/view/components/Shell.svelte');
  return { Shell };
}
