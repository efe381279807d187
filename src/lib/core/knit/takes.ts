/** How many stitches a stretch of instructions takes, where the text alone tells. */

import type { Instruction } from '../model/pattern.ts';
import { forSize } from '../model/sized.ts';

/** Stitches taken by the instructions in one size; `null` when it depends on markers, gaps or the end of the row. */
export function takesOf(body: readonly Instruction[], size: number): number | null {
  let total = 0;
  for (const instruction of body) {
    const takes = takesOfOne(instruction, size);
    if (takes === null) return null;
    total += takes;
  }
  return total;
}

function takesOfOne(instruction: Instruction, size: number): number | null {
  switch (instruction.kind) {
    case 'work':
      return instruction.operation.takes * (forSize(instruction.count, size) ?? 0);
    case 'work-as-set':
      return forSize(instruction.count, size) ?? 0;
    case 'into-one':
      return 1;
    case 'group':
      return takesOfGroup(instruction, size);
    default:
      return DEPENDS.has(instruction.kind) ? null : 0;
  }
}

/** Instructions whose stitches depend on where the hands are. */
const DEPENDS = new Set<Instruction['kind']>([
  'work-to',
  'evenly',
  'shape',
  'over',
  'over-needles',
  'over-target',
  'bind-off',
  'hold'
]);

function takesOfGroup(group: Extract<Instruction, { kind: 'group' }>, size: number): number | null {
  if (group.extent.kind === 'to') return null;
  const once = takesOf(group.body, size);
  return once === null ? null : once * (forSize(group.extent.count, size) ?? 0);
}
