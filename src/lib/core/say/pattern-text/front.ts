/** What stands before the stages: the title, and sizes, gauge and needles where the pattern's own words do not tell them. */

import type { Gauge, NeedleText, Pattern } from '../../model/pattern.ts';

/** First words of a line that would be knitted, if it were no title. */
const KNITTING =
  /^(?:\d|(?:co|cast|rnds?|rounds?|rows?|next|all|every|even|odd|r\d)\b|[^\n]*\b(?:rnds?|rounds?|rows?)\b)/iu;

/** The title and the lines that state sizes, gauge and needles where the text that follows does not. */
export function front(pattern: Pattern, text: string): string[] {
  const lines = [sizes(pattern.sizes, text), gauge(pattern.gauge, text), needles(pattern.needles, text)];
  return [title(pattern), lines.filter((line) => line !== '').join('\n')];
}

// Without a title the first line must not be taken for one.
function title({ title: told, introduction, stages }: Pattern): string {
  if (told !== '') return KNITTING.test(told) ? `# ${told}` : told;
  const [first] = stages;
  const beginsKnitting = introduction.length === 0 && first && isUnnamed(first);
  return beginsKnitting ? '' : '#';
}

/** Whether a stage began without a heading. */
export function isUnnamed({ name, heading }: Pattern['stages'][number]): boolean {
  return name === 'Start' && heading.from === heading.to;
}

// Names of sizes in a line of their own; numbers alone are told by the first list of sizes as well.
function sizes(names: readonly string[], text: string): string {
  const [first, ...rest] = names;
  if (first === undefined || (first === '' && rest.length === 0)) return '';
  const told = /^[ \t]*sizes?(?:[ \t]+available)?[ \t]*[:–—-](.*)$/imu.exec(text)?.[1];
  if (told === undefined ? isCounted(names, text) : inOrder(told, names)) return '';
  return `${rest.length === 0 ? 'Size' : 'Sizes'}: ${first}${rest.length === 0 ? '' : ` (${rest.join(', ')})`}`;
}

// Sizes that are only numbered are as many as the first list of numbers has.
function isCounted(names: readonly string[], text: string): boolean {
  const list = /\d\s?[([]([-\d.,:;/\sx–½¼¾]+)[)\]]/u.exec(text)?.[1] ?? '';
  return names.every((name, size) => name === String(size + 1)) && list.split(/[,:;/]/u).length === names.length - 1;
}

function inOrder(text: string, names: readonly string[]): boolean {
  let at = 0;
  return names.every((name) => {
    const found = text.indexOf(name, at);
    at = found + name.length;
    return found >= 0;
  });
}

function gauge({ stitchesPer10cm, rowsPer10cm }: Gauge, text: string): string {
  const parts = [
    stitchesPer10cm === null ? '' : `${stitchesPer10cm} sts`,
    rowsPer10cm === null ? '' : `${rowsPer10cm} rnds`
  ].filter((part) => part !== '');
  if (parts.length === 0 || /\b(?:gauge|tension)\b|\bst(?:itche)?s\b[^\n]*(?:=|\bto\b|\bper\b)/iu.test(text)) return '';
  return `Gauge: ${parts.join(' and ')} = 10 cm`;
}

function needles({ thicknessMm, lengthCm }: NeedleText, text: string): string {
  const parts = [
    thicknessMm === null ? '' : `${thicknessMm} mm`,
    lengthCm === null ? '' : `${lengthCm} cm long`
  ].filter((part) => part !== '');
  return parts.length === 0 || /\bneedles?\b/iu.test(text) ? '' : `Needles: ${parts.join(', ')}`;
}
