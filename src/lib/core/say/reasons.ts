/** Says what speaks for or against a layout, one plain sentence for each reason. */

import type { Stage } from '../model/fabric.ts';
import type { Reason, ReasonCode } from '../model/judgement.ts';
import type { Judged } from '../model/plan.ts';
import { rowsOf, sentence, stitches } from './counting.ts';

/** What a sentence may need: the names of the needles on either side, the rows, the facts. */
interface Facts {
  /** "the change from N1 to N2, after stitch 16". */
  readonly change: string;
  /** The needle that ends at the break, or the needle the reason is about. */
  readonly left: string;
  /** The needle that begins at the break. */
  readonly right: string;
  readonly rows: string;
  readonly about: string;
  readonly detail: Readonly<Record<string, number>>;
}

const SENTENCES: Readonly<Record<ReasonCode, (facts: Facts) => string>> = {
  'cuts-cable': (f) => cut(f, `the cable ${f.about}`),
  'cuts-twist': (f) => cut(f, `the twist ${f.about}`),
  'cuts-decrease': (f) => cut(f, `the decrease ${f.about}`),
  'cuts-increase': (f) => cut(f, `the stitches made in one by ${f.about}`),
  'section-broken': (f) => `${f.change} breaks the stretch that is worked back and forth on one needle`,
  'needle-too-full': (f) =>
    `${f.left} would hold ${stitches(f.detail.stitches ?? 0)}; at most ${f.detail.limit} go on it`,
  'too-few-to-hold': (f) => `${f.left} would hold ${stitches(f.detail.stitches ?? 0)}, too few to stay on`,
  'too-many-needles': (f) => `${f.detail.needles} needles would hold stitches, but only ${f.detail.holds} can`,
  'does-not-reach': (f) => `the round of ${stitches(f.detail.stitches ?? 0)} does not reach round the needle`,
  'yarn-over-first': (f) => `${f.right} begins with a yarn-over in ${f.rows}`,
  'yarn-over-last': (f) => `${f.left} ends with a yarn-over in ${f.rows}`,
  'increase-first': (f) => `${f.right} begins with the increase ${f.about} in ${f.rows}`,
  'increase-last': (f) => `${f.left} ends with the increase ${f.about} in ${f.rows}`,
  'purl-first': (f) => `${f.right} begins with a purl in ${f.rows}`,
  'splits-rib': (f) => `${f.change} splits a rib in ${f.rows}`,
  'splits-repeat': (f) => `${f.change} lies inside a repeat of ${f.detail.repeat ?? ''} in ${f.rows}`,
  'splits-shaping-pair': (f) => `${f.change} parts the decreases of a pair in ${f.rows}`,
  'bor-inside-needle': (f) => `the round begins inside ${f.left}`,
  'edge-off-break': (f) => `no needle ends at the edge of the section ${f.about}`.trimEnd(),
  'uneven-load': (f) => `${f.left} holds ${stitches(f.detail.stitches ?? 0)}, away from an even share`,
  'share-above-limit': (f) => `${f.left} holds ${f.detail.stitches} of ${stitches(f.detail.of ?? 0)} in ${f.rows}`,
  'share-below-limit': (f) => `${f.left} holds only ${f.detail.stitches} of ${stitches(f.detail.of ?? 0)} in ${f.rows}`,
  'under-minimum': (f) =>
    `${f.left} holds only ${stitches(f.detail.stitches ?? 0)}, fewer than ${f.detail.limit ?? ''}`,
  crowded: (f) => `${f.left} is crowded: ${stitches(f.detail.stitches ?? 0)}, ${f.detail.limit} lie at ease`,
  drift: (f) => `stitches move across ${f.change} from row to row`,
  'off-section': (f) => `${f.change} lies off a section edge`,
  'marker-at-end': (f) =>
    `marker ${f.about} would hang at the end of ${f.left} and fall off: hang it one stitch in, or in the fabric`,
  ladder: (f) => `${f.change} stays in plain fabric for ${f.detail.rows ?? 'many'} rows and may show as a ladder`
};

function cut(facts: Facts, what: string): string {
  const { left, right } = facts.detail;
  return `${facts.change} cuts ${what} in ${facts.rows}: ${left} + ${right} stitches`;
}

/**
 * One sentence about one reason, with a full stop.
 *
 * @param judged - The layout that the reason belongs to; it gives the needles their numbers.
 */
export function sayReason(reason: Reason, judged: Judged, stage: Stage): string {
  return `${sentence(SENTENCES[reason.code](factsOf(reason, judged, stage)))}.`;
}

function factsOf(reason: Reason, judged: Judged, stage: Stage): Facts {
  const { breaks } = judged.layout;
  const index = reason.break === null ? -1 : breaks.indexOf(reason.break);
  const count = Math.max(breaks.length, 1);
  const right = index < 0 ? (reason.needle ?? 0) : index;
  const left = reason.needle ?? (right - 1 + count) % count;
  const [leftName, rightName] = [`N${left + 1}`, `N${right + 1}`];
  return {
    change: `the change from ${leftName} to ${rightName}${place(reason)}`,
    left: leftName,
    right: rightName,
    rows: rowsOf(stage, reason.rows),
    about: reason.about,
    detail: reason.detail
  };
}

function place(reason: Reason): string {
  if (reason.break === null) return '';
  return reason.break === 0 ? ' at the beginning of the round' : `, after stitch ${reason.break},`;
}

/** Why no layout is possible, in the knitter's words. */
export function sayImpossible(because: {
  readonly code: string;
  readonly detail: Readonly<Record<string, number>>;
}): string {
  const { detail } = because;
  switch (because.code) {
    case 'no-stitches':
      return 'Nothing is on the needles in this stage.';
    case 'too-many-for-set':
      return `${stitches(detail.stitches ?? 0)} do not go on this set: ${detail.holds} needles hold at most ${detail.limit} each.`;
    case 'too-few-stitches':
      return `${stitches(detail.stitches ?? 0)} are too few to spread over needles.`;
    case 'does-not-reach':
      return `${stitches(detail.stitches ?? 0)} do not reach round this needle: at least ${detail.limit ?? 'more'} are needed.`;
    default:
      return 'Every possible change of needles would cut a cable, a twist or a decrease in some row.';
  }
}
