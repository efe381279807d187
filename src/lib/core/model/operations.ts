/** The table of operations: how many stitches each takes and makes, and every name it goes by. */

import { crossedOperation, togetherOperation, totalOperation } from './operation-rules.ts';
import type { Family, Operation } from './operation.ts';
import type { Face } from './stitch.ts';

/** An operation together with the other names that published patterns use for it. */
export interface NamedOperation extends Operation {
  readonly aliases: readonly string[];
}

/** `[name, words, takes, makes, aliases]`; faces are knit unless told. */
type Entry = readonly [name: string, words: string, takes: number, makes: number, aliases: readonly string[]];

interface Shared {
  readonly family: Family;
  readonly leans?: Operation['leans'];
  readonly faces?: readonly Face[];
  readonly crosses?: boolean;
}

const PURL = ['purl'] as const;

// Families of operations that share what is not a number. Published names and counts: tests/published/abbreviations.json.
const TABLE: readonly NamedOperation[] = [
  ...entries({ family: 'knit' }, [
    ['k', 'knit', 1, 1, ['knit']],
    ['ktbl', 'knit through the back loop', 1, 1, ['k tbl', 'k1tbl', 'k1-tbl', 'kbl', 'twisted knit', 'k into back']],
    ['k1b', 'knit 1 in the row below', 1, 1, ['k1 below', 'k1-b', 'k below']],
    ['brk', 'brioche knit', 1, 1, ['brk1']],
    ['pick up wrap', 'knit the wrap together with its stitch', 1, 1, ['k wrap tog with st', 'k wraps', 'k wrap tog']]
  ]),
  ...entries({ family: 'purl', faces: PURL }, [
    ['p', 'purl', 1, 1, ['purl']],
    ['ptbl', 'purl through the back loop', 1, 1, ['p tbl', 'p1tbl', 'p1-tbl', 'pbl', 'twisted purl']],
    ['p1b', 'purl 1 in the row below', 1, 1, ['p1 below', 'p1-b', 'p below']],
    ['brp', 'brioche purl', 1, 1, ['brp1']]
  ]),
  ...entries({ family: 'slip' }, [
    ['sl', 'slip', 1, 1, ['slip', 's1', 'sl st', 'ss', 'slip stitch']],
    ['sl1k', 'slip 1 knitwise', 1, 1, ['sl 1 kwise', 'sl1 knitwise', 'sl kwise']],
    ['sl1p', 'slip 1 purlwise', 1, 1, ['sl 1 pwise', 'sl1 purlwise', 'sl pwise']],
    ['sl1yo', 'slip 1 with a yarn over lying on it', 1, 1, ['sl1yof', 'yfsl1yo']],
    ['yb', 'bring the yarn to the back', 0, 0, ['ybk', 'ytb', 'yarn back']],
    ['yf', 'bring the yarn to the front', 0, 0, ['ytf', 'yft', 'yarn front']]
  ]),
  ...entries({ family: 'decrease', leans: 'right' }, [
    ['k2tog', 'knit 2 together', 2, 1, ['k2togs', 'work 2 tog', 'narrow', 'k next 2 sts tog']],
    ['k3tog', 'knit 3 together', 3, 1, ['work 3 tog']],
    ['k3tog tbl', 'knit 3 together through the back loops', 3, 1, ['k3togtbl', 'k3tog-tbl']]
  ]).map((operation) => (operation.name === 'k3tog tbl' ? { ...operation, leans: 'left' as const } : operation)),
  ...entries({ family: 'decrease', leans: 'left' }, [
    [
      'k2tog tbl',
      'knit 2 together through the back loops',
      2,
      1,
      ['k2togtbl', 'k2tog-tbl', 'k2togb', 'k2tog through back loop']
    ],
    ['ssk', 'slip, slip, knit', 2, 1, ['s s k', 'ssk improved', 'slip slip knit']],
    ['sssk', 'slip, slip, slip, knit', 3, 1, ['slip slip slip knit']],
    [
      'skp',
      'slip 1, knit 1, pass slipped stitch over',
      2,
      1,
      ['skpo', 'sl1-k1-psso', 's1 k1 psso', 'slip and bind', 'sl 1 k psso']
    ],
    ['sk2p', 'slip 1, knit 2 together, pass slipped stitch over', 3, 1, ['sk2po', 'sl1-k2tog-psso', 'sl1 k2 tog psso']]
  ]),
  ...entries({ family: 'decrease' }, [
    [
      's2kp2',
      'slip 2 together knitwise, knit 1, pass 2 slipped stitches over',
      3,
      1,
      [
        ...[
          's2kp',
          'sl2-k1-p2sso',
          'sl2tog-k1-p2sso',
          'sl 2 tog kwise k1 p2sso',
          'sl 2 tog k1 p2sso',
          'sl 2 kwise k1 p2sso'
        ],
        ...[
          'cdd',
          'ccd',
          'centred double decrease',
          'central double decrease',
          'centered double decrease',
          'sl 2 k1 p2sso'
        ]
      ]
    ],
    ['pnso', 'pass next stitch over', 1, 0, []],
    ['dec', 'decrease', 2, 1, ['dec 1', 'decrease', 'decrease 1']],
    ['drop st', 'drop a stitch', 1, 0, ['drop next st', 'drop 1', 'drop 1 st']]
  ]),
  // Worked on the wrong side: a lean to the right on the right side is one to the left as seen by the knitter.
  ...entries({ family: 'decrease', faces: PURL, leans: 'left' }, [
    ['p2tog', 'purl 2 together', 2, 1, ['p next 2 sts tog']],
    ['p3tog', 'purl 3 together', 3, 1, []]
  ]),
  ...entries({ family: 'decrease', faces: PURL, leans: 'right' }, [
    [
      'p2tog tbl',
      'purl 2 together through the back loops',
      2,
      1,
      ['p2togtbl', 'p2togb', 'p2tog-tbl', 'p2tog through back loop']
    ],
    ['ssp', 'slip, slip, purl', 2, 1, ['slip slip purl']],
    ['sssp', 'slip, slip, slip, purl', 3, 1, ['slip slip slip purl']]
  ]),
  ...entries({ family: 'decrease', faces: PURL }, [
    ['s2pp2', 'purl-side centred double decrease', 3, 1, ['cdd on WS', 'sssp-centred']]
  ]),
  ...entries({ family: 'increase' }, [
    [
      'kfb',
      'knit into front and back',
      1,
      2,
      ['k1fb', 'k1f&b', 'k1-f/b', 'k1-f&b', 'kf&b', 'bar increase', 'k f b', 'k into front and back']
    ],
    ['kfbf', 'knit into front, back and front', 1, 3, ['k1fbf']],
    ['inc', 'increase', 1, 2, ['inc 1', 'increase', 'increase 1']],
    ['m1', 'make 1', 0, 1, ['make 1', 'make one', 'm1k', 'm1 k', 'make a st']],
    ['m2', 'make 2', 0, 2, ['make 2']]
  ]),
  ...entries({ family: 'increase', leans: 'left' }, [
    ['m1L', 'make 1 left', 0, 1, ['ml', 'm1(l)', 'make 1 left', 'm1 left']],
    ['LLI', 'left lifted increase', 0, 1, ['llinc', 'incl', 'kll', 'left lifted inc']]
  ]),
  ...entries({ family: 'increase', leans: 'right' }, [
    ['m1R', 'make 1 right', 0, 1, ['mr', 'm1(r)', 'make 1 right', 'm1 right']],
    ['RLI', 'right lifted increase', 0, 1, ['rlinc', 'incr', 'krl', 'right lifted inc']]
  ]),
  ...entries({ family: 'increase', faces: PURL }, [
    ['m1p', 'make 1 purlwise', 0, 1, ['m1 p-st', 'm1lp', 'm1rp', 'm1(p)', 'make 1 purlwise', 'm1 purlwise', 'm1 pwise']]
  ]),
  ...entries({ family: 'increase', faces: ['purl', 'purl'] }, [
    [
      'pfb',
      'purl into front and back',
      1,
      2,
      ['p1f&b', 'p1-f/b', 'p1-f&b', 'pf&b', 'pfkb', 'p1fb', 'p into front and back']
    ]
  ]),
  ...entries({ family: 'increase', faces: ['knit', 'purl', 'knit'] }, [
    ['k-p-k', '(k1, p1, k1) in the next stitch', 1, 3, ['kpk', '1-to-3 inc']]
  ]),
  ...entries({ family: 'increase', faces: ['knit', 'knit', 'knit'] }, [
    ['k-yo-k', '(k1, yo, k1) in the next stitch', 1, 3, ['k1-yo-k1', 'kyok']]
  ]),
  ...entries({ family: 'yarn-over' }, [
    ['yo', 'yarn over', 0, 1, ['yarnover', 'y.o.', 'yarn over', 'yarn over needle once']],
    ['yo2', 'double yarn over', 0, 2, ['yo twice', '2yo', 'dyo', 'yo x2', 'double yarn over']],
    ['yfwd', 'yarn forward', 0, 1, ['y fwd', 'yfd', 'y.fd', 'wl fwd', 'wfd', 'yarn forward', 'wool forward']],
    ['yrn', 'yarn round needle', 0, 1, ['yfrn', 'wrn', 'yarn round needle']],
    ['yon', 'yarn over needle', 0, 1, ['won', 'yarn over needle']]
  ]),
  ...entries({ family: 'twist', leans: 'right', crosses: true }, [
    ['RT', 'right twist', 2, 2, ['t2r', 'tw2r', '1/1 RT', 'right twist']]
  ]),
  ...entries({ family: 'twist', leans: 'left', crosses: true }, [
    ['LT', 'left twist', 2, 2, ['t2l', 'tw2l', '1/1 LT', 'left twist']]
  ]),
  ...entries({ family: 'bobble' }, [['MB', 'make bobble', 1, 1, ['bobble', 'make bobble', 'make 1 bobble']]]),
  ...entries({ family: 'wrap' }, [
    ['DS', 'double stitch', 1, 1, ['mds', 'make DS', 'dsk', 'dsp', 'gsr', 'double stitch']]
  ]),
  ...entries({ family: 'pick-up' }, [['pick up', 'pick up and knit', 0, 1, ['pick up and knit']]]),
  ...entries({ family: 'cast-on' }, [['CO', 'cast on', 0, 1, ['cast on']]]),
  ...entries({ family: 'bind-off', faces: [] }, [['BO', 'bind off', 1, 0, ['bind off', 'cast off']]])
];

function entries(shared: Shared, list: readonly Entry[]): NamedOperation[] {
  return list.map(([name, words, takes, makes, aliases]) => ({
    name,
    words,
    family: shared.family,
    takes,
    makes,
    faces: facesFor(shared.faces, makes),
    leans: shared.leans ?? 'none',
    crosses: shared.crosses ?? false,
    aliases
  }));
}

function facesFor(faces: readonly Face[] | undefined, makes: number): readonly Face[] {
  return faces?.length === makes ? faces : new Array<Face>(makes).fill(faces?.[0] ?? 'knit');
}

/** Every operation with a name of its own. Names that follow a rule (k4tog, 2/2 RC, C6F) are not listed here. */
export const OPERATIONS: readonly NamedOperation[] = TABLE;

const BY_NAME = new Map(
  TABLE.flatMap((operation) => [operation.name, ...operation.aliases].map((name) => [plain(name), operation] as const))
);

function plain(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[\s.,-]+/gu, ' ')
    .trim();
}

/**
 * The operation that a name or abbreviation stands for, or `null`; case does not matter.
 *
 * Knows the table, its aliases, and the names that follow a rule: k<n>tog, p<n>tog, <n>-to-1 dec, a/b RC, a/c/b LPC, C<n>F,
 * T<n>B, Tw<n>R, Cr<n>B.
 */
export function operationNamed(name: string): Operation | null {
  const known = BY_NAME.get(plain(name));
  if (known) return known;
  const text = name.trim();
  return togetherOperation(text) ?? crossedOperation(text) ?? totalOperation(text);
}
