import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import type { PlanJson } from '$lib/core/index.ts';
import { run } from '../../src/cli/run.ts';

const EXAMPLES = ['harbour-steps-sock', 'winter-crossing-mitten', 'ferry-lane-hat'];

function file(path: string): string {
  return readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);

/** One run in memory; `files` are what can be read besides the examples. */
async function cli(args: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const written = new Map<string, string | Uint8Array>();
  let out = '';
  let err = '';
  const code = await run(args, {
    read: (path) => files[path] ?? file(`static/examples/${path}.txt`),
    write: (path, data) => {
      if (path.startsWith('locked/')) throw new Error('no such folder');
      written.set(path, data);
    },
    out: (text) => void (out += text),
    err: (text) => void (err += text)
  });
  return { code, out, err, written };
}

const validate = new Ajv2020({ strict: false }).compile(JSON.parse(file('static/schema/plan-1.schema.json')) as object);

describe('roundsplit plan --format json', () => {
  test.each(EXAMPLES)('%s: every size on every set-up fits the schema and adds up', async (name) => {
    const { code, out } = await cli(['plan', name, '--on', 'all', '--size', 'all', '--format', 'json']);
    const plans = JSON.parse(out) as PlanJson[];
    expect(validate(plans), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    expect(plans).toHaveLength(18);
    expect(code).toBe(0);
    for (const stage of plans.flatMap((plan) => plan.stages)) {
      const start = sum(stage.start.map((needle) => needle.stitches));
      const end = sum(stage.end.map((needle) => needle.stitches));
      const [first] = stage.rows;
      if (stage.start.length > 0) expect(start, stage.name).toBe(first ? sum(first.loads) : stage.total.start);
      if (stage.end.length > 0) expect(end, stage.name).toBe(stage.total.end);
      for (const row of stage.rows) {
        expect(row.needles).toHaveLength(row.loads.length);
        if (stage.worked === 'round') expect(sum(row.loads), `${stage.name}, ${row.label}`).toBe(row.before);
      }
      for (const needle of stage.start) {
        expect(sum(needle.sections.map((section) => section.stitches))).toBeLessThanOrEqual(needle.stitches);
      }
    }
  });

  test('the schema refuses what is not a plan', async () => {
    const { out } = await cli(['plan', EXAMPLES[0]!, '--format', 'json']);
    const plan = JSON.parse(out) as PlanJson;
    expect(validate(plan)).toBe(true);
    expect(validate({ ...plan, more: 1 })).toBe(true);
    const [stage, ...rest] = plan.stages;
    expect(validate({ ...plan, roundsplit: 2 })).toBe(false);
    expect(validate({ ...plan, setup: undefined })).toBe(false);
    expect(validate({ ...plan, stages: [{ ...stage, worked: 'sideways' }, ...rest] })).toBe(false);
    expect(validate({ ...plan, stages: [{ ...stage, total: { start: -1, end: 0.5 } }, ...rest] })).toBe(false);
  });

  test('several plans are an array, in the order of the sizes and then of the set-ups', async () => {
    const args = ['plan', EXAMPLES[0]!, '--on', 'dpn-4', '--on', 'magic-loop', '--size', 'L', '--size', 's'];
    const { out } = await cli([...args, '--format', 'json']);
    const plans = JSON.parse(out) as PlanJson[];
    expect(plans.map((plan) => `${plan.size} ${plan.setup.id}`)).toEqual([
      'L dpn-4',
      'L magic-loop',
      'S dpn-4',
      'S magic-loop'
    ]);
  });

  test('one plan is an object', async () => {
    const { out } = await cli(['plan', EXAMPLES[0]!, '--on', 'magic-loop', '--size', 'm', '--format', 'json']);
    const plan = JSON.parse(out) as PlanJson;
    expect(plan).toMatchObject({ roundsplit: 1, size: 'M', setup: { id: 'magic-loop', holds: 2 } });
    expect(plan.stages[0]!.start.map((needle) => needle.group)).toEqual(['front', 'back']);
  });
});

describe('roundsplit plan', () => {
  test('says in text which stitches sit where', async () => {
    const { out } = await cli(['plan', EXAMPLES[0]!, '--on', 'two-circulars', '--size', 'M']);
    expect(out).toContain('HEEL FLAP (line 26), back and forth: 64 stitches');
    expect(out).toMatch(/N2 B 31 \(sole 31\), starts sl, ends k/u);
  });

  test('prints a Markdown table and comma-separated values', async () => {
    expect((await cli(['plan', EXAMPLES[2]!, '--format', 'markdown'])).out).toContain('| Stage | Worked | Stitches |');
    const { out } = await cli(['plan', EXAMPLES[2]!, '--format', 'csv']);
    expect(out.split('\r\n')[0]).toBe('title,size,setup,stage,worked,at,number,needle,state,stitches,sections');
  });

  test('reads standard input for -', async () => {
    const { code, out } = await cli(['plan', '-'], { '-': 'Trial\n\nBODY\nCO 64 sts. Join.\nRnds 1-4: K.\n' });
    expect(out).toContain('N1 A 16');
    expect(code).toBe(0);
  });
});

describe('exit codes', () => {
  const wrong = { wrong: 'Trial\n\nBODY\nCO 64 sts. Join.\nRnd 1: K2tog, k to end. 62 sts.\n' };

  test('1 for a pattern with an error, told once', async () => {
    const { code, out } = await cli(['check', 'wrong'], wrong);
    expect(code).toBe(1);
    expect(out.split('\n').filter((line) => line.includes('count-mismatch'))).toHaveLength(1);
    expect(out).toContain('62 stitches are printed, but knitting gives 63');
  });

  test('1 for a plan of a pattern with an error, which is printed all the same', async () => {
    const { code, out } = await cli(['plan', 'wrong', '--format', 'json'], wrong);
    const plan = JSON.parse(out) as PlanJson;
    expect(code).toBe(1);
    expect(validate(plan)).toBe(true);
    expect(plan.diagnostics).toMatchObject([
      { severity: 'error', code: 'count-mismatch', line: 5, expected: 62, found: 63 }
    ]);
  });

  test('1 for stitches that no needle holds, one line for each set-up; a plan of them is no error', async () => {
    const crowd = { crowd: 'Trial\n\nBODY\nCO 1500 sts. Join.\nRnds 1-4: K.\n' };
    const { code, out } = await cli(['check', 'crowd'], crowd);
    const lines = out.trimEnd().split('\n');
    expect(code).toBe(1);
    expect(lines).toHaveLength(6);
    for (const line of lines) expect(line).toMatch(/^[a-z0-9-]+, BODY: blocker [a-z-]+: .*1500 stitches/u);
    expect((await cli(['plan', 'crowd'], crowd)).code).toBe(0);
  });

  test('0 for a pattern without findings', async () => {
    const { code, out } = await cli(['check', 'fine', '--on', 'magic-loop'], {
      fine: 'Trial\n\nBODY\nCO 64 sts. Join.\nRnds 1-4: K.\n'
    });
    expect(out).toBe('Nothing found.\n');
    expect(code).toBe(0);
  });

  test.each([
    ['an unknown set-up', ['plan', EXAMPLES[0]!, '--on', 'stilts'], 'dpn-5'],
    ['an unknown set-up beside all of them', ['plan', EXAMPLES[0]!, '--on', 'all', '--on', 'stilts'], 'dpn-5'],
    ['an unknown size', ['plan', EXAMPLES[0]!, '--size', 'XXL'], 'S, M, L'],
    ['a file that is not there', ['plan', 'nowhere'], 'cannot read nowhere'],
    ['an unknown size beside all of them', ['check', EXAMPLES[0]!, '--size', 'all', '--size', 'XXL'], 'S, M, L'],
    ['an unknown format', ['plan', EXAMPLES[0]!, '--format', 'yaml'], 'text, json, markdown, csv'],
    ['an unknown stage', ['draw', EXAMPLES[0]!, '--stage', 'Sleeve'], 'CUFF, LEG, HEEL FLAP, HEEL TURN'],
    ['an unknown row', ['draw', EXAMPLES[0]!, '--row', 'Rnd 999'], 'CUFF has no row "Rnd 999"; it has Rnd 1, Rnd 2'],
    ['a stage without stitches', ['draw', EXAMPLES[0]!, '--stage', 'finishing'], 'nothing to draw'],
    ['a picture of all set-ups', ['draw', EXAMPLES[0]!, '--on', 'all'], 'one set-up'],
    ['a picture of all sizes', ['draw', EXAMPLES[0]!, '--size', 'all'], 'one size'],
    ['a file that cannot be written', ['draw', EXAMPLES[0]!, '--out', 'locked/x.svg'], 'cannot write locked/x.svg'],
    ['an unknown ending', ['draw', EXAMPLES[0]!, '--out', 'x.bmp'], '.svg, .png or .pdf'],
    ['an unknown command', ['unravel', EXAMPLES[0]!], 'unravel']
  ])('2 for %s, and says what would be right', async (_title, args, told) => {
    const { code, err } = await cli(args);
    expect(code).toBe(2);
    expect(err).toContain(told);
  });
});

/** Tags that are left open, or what stands where no tag should; none in well-formed XML. */
function openTags(xml: string): string[] {
  const open: string[] = [];
  const tags = /<(\/?)([\w:]+)(?:\s+[\w:-]+="[^"<]*")*\s*(\/?)>|[<>]|&(?!(?:amp|lt|gt|quot|#\d+);)/gu;
  for (const [all, close, name, alone] of xml.matchAll(tags)) {
    if (name === undefined) return [...open, all];
    if (close === '/') {
      if (open.pop() !== name) return [...open, all];
    } else if (alone !== '/') open.push(name);
  }
  return open;
}

describe('roundsplit draw', () => {
  const args = ['draw', EXAMPLES[0]!, '--on', 'dpn-5', '--size', 'M', '--stage', 'leg', '--row', 'Rnd 3'];

  test('prints the same SVG every time', async () => {
    const first = (await cli(args)).out;
    expect(first).toMatch(/^<svg[^>]* xmlns="http:\/\/www.w3.org\/2000\/svg"/u);
    expect((await cli(args)).out).toBe(first);
  });

  test('writes svg that is well-formed', async () => {
    const { code, written, out } = await cli([...args, '--out', 'leg.svg']);
    const svg = String(written.get('leg.svg'));
    expect(code).toBe(0);
    expect(out).toBe('');
    expect(svg).toBe((await cli(args)).out);
    expect(openTags(svg)).toEqual([]);
  });

  test.each([
    ['png', [0x89, 0x50, 0x4e, 0x47]],
    ['pdf', [0x25, 0x50, 0x44, 0x46]]
  ])('writes %s', async (ending, signature) => {
    const { code, written } = await cli([...args, '--out', `leg.${ending}`]);
    expect(code).toBe(0);
    expect([...(written.get(`leg.${ending}`) as Uint8Array).slice(0, 4)]).toEqual(signature);
  });
});
