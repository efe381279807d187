/** Widths of text without a page: advance widths of Atkinson Hyperlegible in thousandths of the font size. */

import type { Run } from '../model/picture.ts';

// From the font's own tables, for the characters from blank to tilde.
const REGULAR = read(
  '280 281 301 655 594 927 705 160 300 300 433 602 205 368 205 377 648 402 549 574 614 583 598 510 615 598 205 205 553 602 553 520 780 626 619 656 673 567 548 710 690 414 510 627 539 820 689 727 601 753 618 596 558 690 589 840 623 595 607 315 377 315 552 396 268 526 566 500 564 539 311 560 546 278 254 490 239 841 546 552 566 576 340 471 324 536 441 654 461 429 460 319 233 319 555'
);
const BOLD = read(
  '320 283 410 783 619 977 702 222 366 366 434 618 243 374 243 442 652 448 586 605 626 612 632 543 625 561 243 243 573 618 573 614 754 690 639 673 686 580 544 719 679 458 560 659 537 842 700 764 626 781 654 619 617 663 656 883 699 687 621 333 442 333 589 430 314 553 596 520 596 566 367 597 572 315 259 567 314 886 572 573 596 601 372 534 379 570 526 723 533 518 516 370 234 370 533'
);

// Wide enough for any letter that the table does not have, and for one of a script whose letters fill a square.
const OTHER = 640;
const SQUARE = 1000;
const FIRST_SQUARE = 0x1100;

// A fallback font may run a little wider.
const SLACK = 1.02;

/** Width of a text in one weight at a font size of 1. */
export function textWidth(text: string, strong: boolean): number {
  const plain = [...text.normalize('NFD').replace(/\p{Mark}/gu, '')];
  const table = strong ? BOLD : REGULAR;
  return (plain.reduce((sum, letter) => sum + widthOf(letter, table), 0) * SLACK) / 1000;
}

/** Width of the widest line at a font size. */
export function linesWidth(lines: readonly (readonly Run[])[], size: number): number {
  const widths = lines.map((runs) => runs.reduce((sum, run) => sum + textWidth(run.text, run.strong), 0));
  return Math.max(0, ...widths) * size;
}

/**
 * Breaks a text between words into lines of about `most` letters; words that are longer are cut, and what does not fit
 * into three lines ends in an ellipsis.
 */
export function wrapText(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/u).flatMap((part) => cut(part, most))) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  if (lines.length <= 3) return lines;
  return [...lines.slice(0, 2), `${lines[2]!.slice(0, most - 1)}…`];
}

function cut(word: string, most: number): string[] {
  const letters = [...word];
  if (letters.length <= most) return [word];
  const parts = Math.ceil(letters.length / most);
  return Array.from({ length: parts }, (_, index) => letters.slice(index * most, (index + 1) * most).join(''));
}

function widthOf(letter: string, table: readonly number[]): number {
  const code = letter.codePointAt(0)!;
  if (letter === '·') return 301;
  return table[code - 32] ?? (code < FIRST_SQUARE ? OTHER : code >= 0x2000 && code < 0x2e80 ? 860 : SQUARE);
}

function read(widths: string): number[] {
  return widths.split(' ').map(Number);
}
