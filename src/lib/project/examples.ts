/** The example patterns that come with the app. */

import * as v from 'valibot';
import { acceptText, type FileOutcome } from './files.ts';

const schema = v.array(
  v.object({ title: v.string(), file: v.pipe(v.string(), v.regex(/^[\w-]+\.txt$/u)), about: v.string() })
);

/** One example pattern. */
export type Example = Readonly<v.InferOutput<typeof schema>[number]>;

/** Said when an example cannot be fetched. */
const NOT_FETCHED = 'The example could not be fetched. Is there a connection?';

/**
 * Lists the examples; empty when they cannot be fetched.
 *
 * @param root - Address of the app, without a slash at the end.
 */
export async function listExamples(root: string): Promise<readonly Example[]> {
  try {
    const answer = await fetch(`${root}/examples/index.json`);
    const result = v.safeParse(schema, await answer.json());
    return result.success ? result.output : [];
  } catch {
    return [];
  }
}

/** Fetches the text of an example. */
export async function fetchExample(root: string, file: string): Promise<FileOutcome> {
  try {
    const answer = await fetch(`${root}/examples/${file}`);
    return answer.ok ? acceptText(await answer.text()) : { kind: 'refused', because: NOT_FETCHED };
  } catch {
    return { kind: 'refused', because: NOT_FETCHED };
  }
}
