/** Tables of Markdown, each row written as a line of a pattern. */

const ROW_NAMES = /^(rnd|round|row)s?\.?$/iu;
const COUNT_NAMES = /^(?:sts?|stitches|stitch count|count|total(?: sts)?)$/iu;

/** True for the line below the head of a table: "|---|:---:|". */
export function isTableRule(line: string): boolean {
  return line.includes('|') && /^\s*\|?\s*:?-+:?\s*(?:\|\s*:?-+:?\s*)*\|?\s*$/u.test(line);
}

/** The cells of a row. */
export function cellsOf(line: string): string[] {
  return line
    .trim()
    .replace(/^\||\|$/gu, '')
    .split('|')
    .map((cell) => cell.trim());
}

/** Writes a table as lines: rows as "Rnd 3: …", sizes as "Cast on: 56 (64, 72)", anything else as "first: others". */
export function writeTable(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const first = head[0] ?? '';
  const name = ROW_NAMES.exec(first)?.[1];
  if (name) return rows.map((cells) => writeRow(name, head, cells));
  if (/^sizes?$/iu.test(first)) return [head, ...rows].map(writeSizes);
  const heading = head.filter((cell) => cell !== '').join(', ');
  return [...(heading === '' ? [] : [heading]), ...rows.map((cells) => labelled(cells[0], cells.slice(1).join(', ')))];
}

function writeRow(name: string, head: readonly string[], cells: readonly string[]): string {
  const [number = '', ...work] = cells;
  const said = work.map((cell, index) => {
    const isCount = COUNT_NAMES.test(head[index + 1] ?? '') && /^\d[\d\s(),[\]/-]*$/u.test(cell);
    return isCount ? `[${cell} sts]` : cell;
  });
  const many = /^\d+\s*\D+\s*\d/u.test(number) ? 's' : '';
  const label = /^\d/u.test(number) ? `${name}${many} ${number}` : number;
  return labelled(label, said.filter((cell) => cell !== '').join(' '));
}

function writeSizes(cells: readonly string[], row: number): string {
  const [name = '', first = '', ...others] = cells;
  const label = row === 0 && others.length > 0 ? 'Sizes' : name;
  return labelled(label, others.length > 0 ? `${first} (${others.join(', ')})` : first);
}

function labelled(label = '', rest: string): string {
  if (label === '' || rest === '') return label + rest;
  return `${label.replace(/:$/u, '')}: ${rest}`;
}
