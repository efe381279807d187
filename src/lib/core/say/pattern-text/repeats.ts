/** Rows that the text does not write out: rows worked again, shaping spread over rows, plain rows. */

import type { PlainStitch } from '../../model/plain-rows.ts';
import type { Statement } from '../../model/pattern.ts';
import type { RowReference } from '../../model/repeating.ts';
import type { Progression, ShapeRows } from '../../model/shaping.ts';
import { every, extent, length } from './extents.ts';
import { capital, ranges, sized } from './numbers.ts';
import { placeOf } from './stitches.ts';

type Of<Kind extends Statement['kind']> = Extract<Statement, { kind: Kind }>;

/** "Rep rnds 1 and 2 three more times", "Rep dec rnd every other rnd until 32 sts rem". */
export function repeatRows({ rows, plainBetween, extent: often }: Of<'repeat-rows'>, noun: string): string {
  const between = plainBetween === 0 ? '' : `${every(plainBetween, noun)} `;
  return `Rep ${reference(rows, noun)} ${between}${extent(often, noun)}`;
}

function reference(rows: RowReference, noun: string): string {
  if (rows.kind === 'named') return rows.name;
  if (rows.kind === 'last') return rows.count === 1 ? `last ${noun}` : `last ${rows.count} ${noun}s`;
  return `${noun}${rows.numbers.length > 1 ? 's' : ''} ${ranges(rows.numbers)}`;
}

/** "Dec 1 st at each end of every 4th row 5 times", "At the same time, inc 1 st at each end of next and every foll 4th row". */
export function shapeRows(told: ShapeRows, noun: string): string {
  const text = `${change(told)} ${schedule(told, noun)}`;
  return told.during ? `At the same time, ${text}` : capital(text);
}

function change({ change: word, body }: ShapeRows): string {
  const [part] = body;
  const count = part && 'count' in part && part.count ? part.count : [1];
  const stitches = `${word} ${sized(count)} ${count.length === 1 && count[0] === 1 ? 'st' : 'sts'}`;
  if (part?.kind !== 'shape') return stitches;
  return `${stitches} ${placeOf(part)}${part.places === 'markers' || part.places === 'pair' ? ' on' : ' of'}`;
}

function schedule({ plainBetween, atOnce, extent: often }: ShapeRows, noun: string): string {
  const until = often ? ` ${often.kind === 'times' ? `${sized(often.count)} times` : extent(often, noun)}` : '';
  const isNext = atOnce && plainBetween === 0 && often?.kind === 'times';
  if (isNext && often.count.length === 1 && often.count[0] === 1) return `next ${noun}`;
  if (isNext) return `next ${sized(often.count)} ${noun}s`;
  return `${atOnce ? 'next and ' : ''}${every(plainBetween, noun)}${until}`;
}

/** "Cont in this manner, working 1 fewer st each time, until 24 sts rem". */
export function progression({ step, extent: often }: Progression, noun: string): string {
  if (step === null) return `Cont in this manner ${extent(often, noun)}`;
  const number = Math.abs(step);
  const more = `${number} ${step < 0 ? 'fewer' : 'more'} ${number === 1 ? 'st' : 'sts'}`;
  return `Cont in this manner, working ${more} each time, ${extent(often, noun)}`;
}

/** "Knit 60 rnds", "Work even for 44 rnds", "Work in k2, p2 rib for 20 rnds". */
export function even(told: Of<'even'>, noun: string): string {
  const rows = `${sized(told.rows)} ${noun}s`;
  if (told.as === 'knit' || told.as === 'purl') return `${capital(told.as)} ${rows}`;
  return `Work ${inPattern(told)} for ${rows}`;
}

/** "Knit every rnd until piece measures 15 cm from CO edge". */
export function evenUntil(told: Of<'even-until'>, noun: string): string {
  if (told.as === 'knit' || told.as === 'purl') return `${capital(told.as)} every ${noun} ${length(told)}`;
  return `Work ${inPattern(told)} ${length(told)}`;
}

function inPattern({ as, unit }: PlainStitch): string {
  if (as === 'stockinette') return 'in St st';
  if (as === 'garter' || as === 'seed') return `in ${as} st`;
  if (as !== 'rib') return 'even';
  const parts = unit.map((part) => (part.kind === 'work' ? `${part.operation.name}${sized(part.count)}` : ''));
  return `in ${parts.join(', ')} rib`;
}
