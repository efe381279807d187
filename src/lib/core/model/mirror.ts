/** Patterns for knitters who work the other way round: what leans to the left leans to the right, and no number changes. */

import type { Operation } from './operation.ts';
import { operationNamed } from './operations.ts';
import type { Instruction, Pattern, StageText, Statement } from './pattern.ts';

/** Operations that lean, and what leans the other way; two ways to lean left have the same counterpart. */
const COUNTERPARTS: Readonly<Record<string, string>> = {
  k2tog: 'ssk',
  ssk: 'k2tog',
  skp: 'k2tog',
  'k2tog tbl': 'k2tog',
  k3tog: 'sssk',
  sssk: 'k3tog',
  sk2p: 'k3tog',
  'k3tog tbl': 'k3tog',
  p2tog: 'ssp',
  ssp: 'p2tog',
  'p2tog tbl': 'p2tog',
  p3tog: 'sssp',
  sssp: 'p3tog',
  m1L: 'm1R',
  m1R: 'm1L',
  LLI: 'RLI',
  RLI: 'LLI',
  LT: 'RT',
  RT: 'LT'
};

/** Letters at the end of a cable's name that say where it leans: RC, LPC, C6F, T3B, Tw2L. */
const SIDES: Readonly<Record<string, string>> = { R: 'L', L: 'R', F: 'B', B: 'F' };

/** The operation that leans the other way; one that does not lean is its own. It takes and makes as many stitches. */
export function mirrorOperation(operation: Operation): Operation {
  if (operation.leans === 'none') return operation;
  const name = COUNTERPARTS[operation.name] ?? mirrorName(operation.name);
  const known = operationNamed(name);
  const isSame = known?.takes === operation.takes && known.makes === operation.makes;
  if (known && isSame && known.leans !== operation.leans) return known;
  const leans = operation.leans === 'left' ? 'right' : 'left';
  return { ...operation, name, leans, faces: operation.faces.toReversed() };
}

// k4tog and k4tog tbl; 2/2 RC and 2/2 LC; C6F and C6B. Other names stay.
function mirrorName(name: string): string {
  const together = /^([kp]\d+tog)( tbl)?$/u.exec(name);
  if (together) return together[2] ? together[1]! : `${together[1]} tbl`;
  const told = /^(.*\d\s?)([RL])(P?[CT])$/u.exec(name) ?? /^((?:C|T|Cr|Tw)\d+)([FBRL])()$/u.exec(name);
  return told ? `${told[1]}${SIDES[told[2]!]}${told[3]}` : name;
}

/** The pattern with every lean turned round. Counts, loads, needles, places and words stay as they are. */
export function mirrorPattern(pattern: Pattern): Pattern {
  return { ...pattern, stages: pattern.stages.map(mirrorStage) };
}

function mirrorStage(stage: StageText): StageText {
  return { ...stage, statements: stage.statements.map(mirrorStatement) };
}

function mirrorStatement(told: Statement): Statement {
  if ('body' in told) return { ...told, body: told.body.map(mirrorInstruction) };
  return 'unit' in told ? { ...told, unit: told.unit.map(mirrorInstruction) } : told;
}

function mirrorInstruction(part: Instruction): Instruction {
  if ('body' in part) return { ...part, body: part.body.map(mirrorInstruction) };
  return 'operation' in part && part.operation ? { ...part, operation: mirrorOperation(part.operation) } : part;
}
