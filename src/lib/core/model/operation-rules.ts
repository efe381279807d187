/** Operations whose names follow a rule: the numbers in the name give the stitches. */

import type { Operation } from './operation.ts';
import type { Face } from './stitch.ts';

/** Most stitches that one operation may take; a number beyond it in a name is a slip of the pen. */
const MOST_TAKEN = 40;

/** k<n>tog, p<n>tog, each also through the back loops, and <n>-to-1 dec. */
export function togetherOperation(name: string): Operation | null {
  const together = /^([kp])\s?(\d+)\s?tog(?:[\s-]?(?:tbl|b))?$/iu.exec(name);
  if (together) return workedTogether(together[1]!.toLowerCase() as 'k' | 'p', Number(together[2]), /b/iu.test(name));
  const symmetrical = /^(\d+)[\s-]to[\s-]1[\s-]dec$/iu.exec(name);
  if (!symmetrical) return null;
  const takes = Number(symmetrical[1]);
  if (!isAllowed(takes)) return null;
  return decrease({ name: `${takes}-to-1 dec`, words: `${takes}-to-1 decrease`, takes, face: 'knit', leans: 'none' });
}

// Seen by the knitter, a purled decrease leans the other way than it does on the right side.
function workedTogether(letter: 'k' | 'p', takes: number, back: boolean): Operation | null {
  if (!isAllowed(takes)) return null;
  const verb = letter === 'k' ? 'knit' : 'purl';
  return decrease({
    name: `${letter}${takes}tog${back ? ' tbl' : ''}`,
    words: `${verb} ${takes} together${back ? ' through the back loops' : ''}`,
    takes,
    face: verb,
    leans: (letter === 'k') === back ? 'left' : 'right'
  });
}

function decrease(told: {
  readonly name: string;
  readonly words: string;
  readonly takes: number;
  readonly face: Face;
  readonly leans: Operation['leans'];
}): Operation {
  const { face, ...rest } = told;
  return { ...rest, family: 'decrease', makes: 1, faces: [face], crosses: false };
}

/** a/b RC, LC, RPC, LPC, RT, LT and the same in three parts. The numbers are added. */
export function crossedOperation(name: string): Operation | null {
  const found = /^(\d+)\s?\/\s?(\d+)(?:\s?\/\s?(\d+))?\s?([rl])(p)?([ct])$/iu.exec(name);
  if (!found) return null;
  const [first = 0, second = 0] = [Number(found[1]), Number(found[2])];
  const third = found[3] === undefined ? null : Number(found[3]);
  const parts = third === null ? [first, second] : [first, second, third];
  const side = found[4]!.toUpperCase() === 'R' ? 'right' : 'left';
  const kind = `${found[4]}${found[5] ?? ''}${found[6]}`.toUpperCase();
  const faces = crossedFaces(parts, side, found[5] !== undefined);
  if (parts.includes(0) || !isAllowed(faces.length)) return null;
  return crossing({ name: `${parts.join('/')} ${kind}`, faces, side, twist: /t/iu.test(found[6]!) });
}

// Right: the knitted front stitches come first, then the ones behind; left: the ones behind come first. With three
// parts only the middle one is purled.
function crossedFaces(parts: readonly number[], side: 'left' | 'right', purled: boolean): Face[] {
  const [front = 0, second = 0, third] = parts;
  const behind: Face = purled ? 'purl' : 'knit';
  if (third !== undefined) return [...faces('knit', front), ...faces(behind, second), ...faces('knit', third)];
  const [over, under] = [faces('knit', front), faces(behind, second)];
  return side === 'right' ? [...over, ...under] : [...under, ...over];
}

function faces(face: Face, count: number): Face[] {
  return new Array<Face>(Math.min(count, MOST_TAKEN + 1)).fill(face);
}

/** C<n>F and C<n>B (all knit), T<n>F, T<n>B and Cr<n>F (purls behind), Tw<n>L and Tw<n>R. The number is the total. */
export function totalOperation(name: string): Operation | null {
  const found = /^(c|t|cr|tw)\s?(\d+)\s?([fblr])$/iu.exec(name);
  if (!found) return null;
  const total = Number(found[2]);
  const letter = found[1]!.toLowerCase();
  const end = found[3]!.toUpperCase();
  if (total < 2 || !isAllowed(total)) return null;
  const side = end === 'B' || end === 'R' ? 'right' : 'left';
  const purled = letter === 'cr' || (letter === 't' && (end === 'F' || end === 'B'));
  const front = Math.ceil(total / 2);
  const made = crossedFaces([front, total - front], side, purled);
  const head = letter.charAt(0).toUpperCase() + letter.slice(1);
  return crossing({ name: `${head}${total}${end}`, faces: made, side, twist: letter === 'tw' || total === 2 });
}

function crossing(told: {
  readonly name: string;
  readonly faces: readonly Face[];
  readonly side: 'left' | 'right';
  readonly twist: boolean;
}): Operation {
  const { name, faces: made, side, twist } = told;
  return {
    name,
    words: `${made.length}-stitch ${twist ? 'twist' : 'cable'} to the ${side}${made.includes('purl') ? ', purls behind' : ''}`,
    family: twist ? 'twist' : 'cable',
    takes: made.length,
    makes: made.length,
    faces: made,
    leans: side,
    crosses: true
  };
}

function isAllowed(stitches: number): boolean {
  return stitches >= 1 && stitches <= MOST_TAKEN;
}
