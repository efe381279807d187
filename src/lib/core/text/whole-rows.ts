/** A bare "k" that is the whole row: "K.", "K, inc 6 sts evenly.", "K, removing markers." */

import type { Instruction } from '../model/pattern.ts';
import type { Cursor } from './cursor.ts';
import { isBare } from './stitches.ts';

/** Works a bare "k" alone to the end of the row; it says nothing more where increases are spread over the row. */
export function stretchBare(at: Cursor, instructions: Instruction[]): void {
  const [only, after] = instructions;
  if (!only || !isWhole(at, instructions)) return;
  if (isSpread(after)) instructions.shift();
  else instructions[0] = toEnd(only);
}

function isWhole(at: Cursor, instructions: readonly Instruction[]): boolean {
  const [only, after] = instructions;
  if (!only || instructions.length > 2) return false;
  const written = at.source.text.slice(only.span.from, only.span.to);
  return isBare(only, written) && (after === undefined || isSpread(after) || isAside(after));
}

// Goes over the whole row, whatever is said before.
function isSpread(instruction: Instruction | undefined): boolean {
  return instruction?.kind === 'evenly' || instruction?.kind === 'shape';
}

// Says something about the whole row, and works no stitch of it.
function isAside(instruction: Instruction | undefined): boolean {
  return instruction?.kind === 'turn' || instruction?.kind === 'remove-markers';
}

/** The instruction worked to the end instead of once. */
export function toEnd(instruction: Instruction): Instruction {
  if (instruction.kind !== 'work') return instruction;
  return { kind: 'work-to', operation: instruction.operation, target: { kind: 'end' }, span: instruction.span };
}
