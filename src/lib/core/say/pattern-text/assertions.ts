/** Printed counts: "62 sts", "2 sts dec'd", "17 heel sts", "16-32-16". */

import type { Assertion } from '../../model/pattern.ts';
import type { Sized } from '../../model/sized.ts';
import { needleNamed, needles } from './needles.ts';
import { ordinal, sized, stitches } from './numbers.ts';

/** One printed count, without brackets. */
export function assertion(told: Assertion): string {
  switch (told.kind) {
    case 'total':
      return stitches(told.count);
    case 'change':
      return change(told.count);
    case 'part':
      return part(told.of, told.count);
    case 'rows':
      return `${sized(told.count)} rows`;
    case 'loads':
      return loads(told);
    case 'on-needles':
      return `${stitches(told.count)} on ${needles(told.needles)}`;
  }
}

function change(count: Sized<number>): string {
  const fewer = count.some((entry) => entry !== null && (entry < 0 || Object.is(entry, -0)));
  const size = count.map((entry) => (entry === null ? null : Math.abs(entry)));
  return `${stitches(size)} ${fewer ? "dec'd" : "inc'd"}`;
}

function part(of: string, count: Sized<number>): string {
  const isPlace = of === 'unworked' || /^(?:to|after|before|between) /u.test(of);
  return isPlace ? `${stitches(count)} ${of}` : stitches(count, of);
}

/** Stitches per needle: "16-32-16", "N1: 24 sts, N2: 20 sts", "24 sts on the 1st needle, 20 sts on the other". */
export function loads(told: {
  readonly loads: readonly Sized<number>[];
  readonly names: readonly string[] | null;
}): string {
  const { names } = told;
  if (names === null) return isDashed(told.loads) ? told.loads.map(sized).join('-') : listed(told.loads);
  const isNamed = names.every((name) => name !== 'other');
  const one = (load: Sized<number>, index: number) =>
    isNamed ? `${needleNamed(names[index]!)}: ${stitches(load)}` : `${stitches(load)} on the ${counted(names[index]!)}`;
  return told.loads.map(one).join(', ');
}

function counted(name: string): string {
  if (name === 'other') return name;
  return /^\d$/u.test(name) ? `${ordinal(Number(name))} needle` : needleNamed(name);
}

// Two numbers with a hyphen are a range as easily.
function isDashed(list: readonly Sized<number>[]): boolean {
  return list.length > 2 && list.every((load) => load.length === 1 && load[0] !== null);
}

function listed(list: readonly Sized<number>[]): string {
  const [first] = list.map(sized);
  if (list.every((load) => sized(load) === first)) return `${stitches(list[0]!)} on each of ${list.length} needles`;
  return list.map((load) => `${stitches(load)} on one needle`).join(', ');
}

/** Whether a bracket around the count would be taken for a side note inside a row. */
export function isSentence(told: Assertion): boolean {
  return told.kind === 'loads' && told.names !== null;
}
