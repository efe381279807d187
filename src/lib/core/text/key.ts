/** The pattern's own key: "inc = kfb; 2/2 RPC = sl 2 to cn, hold back, k2, p2 from cn". */

import type { Family, Operation } from '../model/operation.ts';
import { operationNamed } from '../model/operations.ts';
import type { Face } from '../model/stitch.ts';
import { forSize } from '../model/sized.ts';
import { readBody } from './body.ts';
import type { Cursor } from './cursor.ts';
import { atomAt, readOperation } from './phrases.ts';

/** Most stitches that a meaning in the key may take or make. */
const MOST_STITCHES = 60;

/** Reads the entries of a key, parted by semicolons or full stops; those not understood are reported. */
export function readKey(at: Cursor): void {
  while (!at.done) {
    at.separators();
    const end = endOfEntry(at);
    if (end > at.at) readEntry(at.within(at.at, end));
    at.at = Math.max(end, at.at + 1);
  }
}

function endOfEntry(at: Cursor): number {
  let end = at.at;
  while (end < at.range.end) {
    const { text } = at.source.tokens[end]!;
    if (text === ';' || (text === '.' && !isInName(at, end))) return end;
    if (text === ',' && startsEntry(at.within(end + 1, at.range.end))) return end;
    end += 1;
  }
  return end;
}

// "tog. = together", "m. 1 = make 1": a full stop in the name of an entry.
function isInName(at: Cursor, stop: number): boolean {
  const { tokens } = at.source;
  const next = tokens[stop + 1]?.kind === 'number' ? stop + 2 : stop + 1;
  return next < at.range.end && tokens[next]?.text === '=';
}

// "k = knit, p = purl": a comma parts entries when a new "name =" follows.
function startsEntry(at: Cursor): boolean {
  for (let offset = 1; offset < 6; offset += 1) {
    if (at.text(offset) === '=') return true;
    if ([',', ';', '.', ''].includes(at.text(offset))) return false;
  }
  return false;
}

function readEntry(at: Cursor): void {
  const first = at.at;
  const atoms: string[] = [];
  while (!at.done && !['=', ':'].includes(at.text())) {
    if (!['-', ',', '.'].includes(at.text())) atoms.push(atomAt(at));
    at.at += 1;
  }
  const name = at.at > first ? at.written(first) : '';
  const span = at.span(first);
  if (!at.take('=', ':') || name === '') return;
  addEntry(at, { name, atoms, span });
}

function addEntry(
  at: Cursor,
  told: { readonly name: string; readonly atoms: readonly string[]; readonly span: { from: number; to: number } }
): void {
  const { name, atoms, span } = told;
  const operation = readMeaning(at, name);
  if (operation) at.scope.key.push({ atoms, operation });
  else if (!isKnown(name)) at.scope.report('key-not-understood', span, { about: name });
}

// Words such as "st", "rnd" and "RS" are explained in keys too; they need no meaning here.
function isKnown(name: string): boolean {
  return (
    operationNamed(name.replaceAll(/[. ]/gu, '')) !== null || !/\d|^(?:inc|dec|[kp]\w*|\w+tog|m[bc])$/iu.test(name)
  );
}

/** Reads "To narrow is to knit two stitches together." as an entry of the key. */
export function readDefinition(at: Cursor): boolean {
  return (
    at.attempt(() => {
      const first = at.at;
      if (!at.take('to')) return null;
      const atoms: string[] = [];
      while (atoms.length < 5 && at.peek()?.kind === 'word' && at.text() !== 'is') {
        atoms.push(atomAt(at));
        at.at += 1;
      }
      if (atoms.length === 0 || !at.phrase('is to')) return null;
      const name = at.written(first);
      const found = readOperation(at);
      if (!found) return null;
      at.scope.key.push({ atoms, operation: found.operation });
      return name;
    }) !== null
  );
}

function readMeaning(at: Cursor, name: string): Operation | null {
  const single = at.attempt(() => {
    const found = readOperation(at);
    at.separators();
    return found && at.done ? found.operation : null;
  });
  return single ?? readCable(at, name) ?? readSum(at, name);
}

// "sl 2 to cn, hold back, k2, p2 from cn": what is worked first comes to lie first.
function readCable(at: Cursor, name: string): Operation | null {
  return at.attempt(() => {
    const hold = holdSide(at);
    if (!hold) return null;
    const made = readFaces(at);
    if (!made || made.takes !== made.faces.length) return null;
    return {
      name,
      words: at.written(at.range.from),
      family: 'cable',
      takes: made.takes,
      makes: made.faces.length,
      faces: made.faces,
      leans: hold === 'back' ? 'right' : 'left',
      crosses: true
    };
  });
}

function holdSide(at: Cursor): 'back' | 'front' | null {
  let side: 'back' | 'front' | null = null;
  let needle = false;
  for (let offset = 0; at.peek(offset); offset += 1) {
    const text = at.text(offset);
    if (text === 'cn' || text === 'cable') needle = true;
    if (side === null && (text === 'back' || text === 'front')) side = text;
  }
  return needle ? side : null;
}

// Every stitch instruction but the slip to the cable needle makes stitches, in the order told.
function readFaces(at: Cursor): { readonly takes: number; readonly faces: Face[] } | null {
  const faces: Face[] = [];
  let takes = 0;
  while (!at.done) {
    const slip = at.attempt(() => (at.take('sl', 'slip', 'place', 'put') ? skipToComma(at) : null));
    if (slip) continue;
    const found = at.attempt(readCounted);
    if (!found) {
      at.at += 1;
      continue;
    }
    takes += found.operation.takes * found.count;
    for (let time = 0; time < found.count; time += 1) faces.push(...found.operation.faces);
    if (takes > MOST_STITCHES || faces.length > MOST_STITCHES) return null;
  }
  return faces.length > 0 ? { takes, faces } : null;
}

function skipToComma(at: Cursor): true {
  while (at.peek() && ![',', ';', '.', 'and'].includes(at.text())) at.at += 1;
  return true;
}

function readCounted(at: Cursor): { readonly operation: Operation; readonly count: number } | null {
  const found = readOperation(at);
  if (!found) return null;
  const count = found.counted ? 1 : (at.whole() ?? 1);
  return count <= MOST_STITCHES ? { operation: found.operation, count } : null;
}

// "work k2tog, yo": the sum of its stitches.
function readSum(at: Cursor, name: string): Operation | null {
  return at.attempt(() => {
    const body = readBody(at, { isOther: () => false, place: 'inner' });
    if (body.failed || body.instructions.length === 0) return null;
    let takes = 0;
    const faces: Face[] = [];
    for (const part of body.instructions) {
      if (part.kind !== 'work') return null;
      const count = forSize(part.count, 0) ?? 0;
      takes += part.operation.takes * count;
      if (takes > MOST_STITCHES || count > MOST_STITCHES) return null;
      for (let time = 0; time < count; time += 1) faces.push(...part.operation.faces);
    }
    return summed({ name, words: at.written(at.range.from), takes, faces });
  });
}

function summed(told: {
  readonly name: string;
  readonly words: string;
  readonly takes: number;
  readonly faces: Face[];
}): Operation {
  const { takes, faces } = told;
  const family: Family = faces.length > takes ? 'increase' : faces.length < takes ? 'decrease' : 'knit';
  return { ...told, family, makes: faces.length, leans: 'none', crosses: false };
}
