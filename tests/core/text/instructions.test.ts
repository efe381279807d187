import { describe, expect, test } from 'vitest';
import { bodyOf } from './notation.ts';

type Case = readonly [text: string, body: string];

// The wordings are those of the inventory of constructions; the readings are told there or counted by hand.
describe.each<readonly [string, readonly Case[]]>([
  [
    'stitches and their numbers',
    [
      ['k4, p2', 'k4 p2'],
      ['K4. P2.', 'k4 p2'],
      ['K 4, p 2', 'k4 p2'],
      ['knit 4, purl 2', 'k4 p2'],
      ['sl-1, k 3', 'sl1 k3'],
      ['k, p2, k', 'k1 p2 k1'],
      ['k4 p2 k2', 'k4 p2 k2'],
      ['K3. Ssk. P2', 'k3 ssk p2'],
      ['k3, then p2 and k1', 'k3 p2 k1'],
      ['2 purl sts, k1', 'p2 k1'],
      ['p the next 3 sts, k1', 'p3 k1'],
      ['knit first 4 stitches, p1', 'k4 p1'],
      ['sl first st, k2', 'sl1 k2'],
      ['slip one stitch, knit two', 'sl1 k2'],
      ['k9 heel sts, p3', 'k9 p3'],
      ['k the 34 instep sts, p2', 'k34 p2'],
      ['K0, p2', 'k0 p2'],
      ['knit twenty-four, p1', 'k24 p1'],
      ['yf, sl 1, yb, k1', 'sl1 k1']
    ]
  ],
  [
    'how a stitch is worked',
    [
      ['sl 1 wyif, k1', 'sl1 k1'],
      ['sl 1 pwise wyib, k1', 'sl1p k1'],
      ['slip 1 with yarn in back, k1', 'sl1 k1'],
      ['sl 1 kwise, p1', 'sl1k p1'],
      ['k1 tbl, p1', 'ktbl p1'],
      ['k1tbl, p1tbl', 'ktbl ptbl'],
      ['k3 tbl, p1', 'ktbl x3 p1'],
      ['knit 1 through the back loop, p1', 'ktbl p1'],
      ['k1b, p1', 'k1b p1']
    ]
  ],
  [
    'decreases by every name',
    [
      ['k2tog, k 2 tog, K2 tog', 'k2tog k2tog k2tog'],
      ['knit 2 together, k1', 'k2tog k1'],
      ['knit the next two stitches together, k1', 'k2tog k1'],
      ['k3tog, k4tog, p3tog', 'k3tog k4tog p3tog'],
      ['k2tog tbl, p2togtbl, k2tog-tbl', 'k2tog tbl p2tog tbl k2tog tbl'],
      ['knit 2 together through the back loops, k1', 'k2tog tbl k1'],
      ['ssk, SSK, slip, slip, knit, p1', 'ssk ssk ssk p1'],
      ['sl 1, k1, psso, k2', 'skp k2'],
      ['sl1-k1-psso, skpo', 'skp skp'],
      ['slip 1, knit 1, pass slipped stitch over, knit 3', 'skp k3'],
      ['sl 1, knit 1, pass the slipped st over, k3', 'skp k3'],
      ['sl 1, k2tog, psso, k1', 'sk2p k1'],
      ['sl 1, k1, p1', 'sl1 k1 p1'],
      ['s2kp, cdd, sl 2, k1, p2sso', 's2kp2 s2kp2 s2kp2'],
      ['p2tog, ssp, sssk', 'p2tog ssp sssk'],
      ['k2tog 3 times, k1', 'k2tog x3 k1'],
      ['ssk twice, k1', 'ssk x2 k1'],
      ['5-to-1 dec, k1', '5-to-1 dec k1']
    ]
  ],
  [
    'increases by every name',
    [
      ['m1, k2, M1L, m1r, m1p', 'm1 k2 m1L m1R m1p'],
      ['make 1, k2, make one, k1', 'm1 k2 m1 k1'],
      ['m1 p4', 'm1 p4'],
      ['kfb, k1fb, k1f&b, pfb', 'kfb kfb kfb pfb'],
      ['yo, k2tog, yarn over, k1', 'yo k2tog yo k1'],
      ['yo twice, k1', 'yo2 k1'],
      ['LLI, k1, RLI', 'LLI k1 RLI'],
      ['(k1, p1, k1) in next st, k2', '<k1 p1 k1> k2'],
      ['(P1, yo, p1) into next stitch, k2', '<p1 yo p1> k2'],
      ['(k1, yo, k1) all in same st, k2', '<k1 yo k1> k2']
    ]
  ],
  [
    'cables and twists',
    [
      ['k2, 2/2 RC, p1', 'k2 2/2 RC p1'],
      ['2/1 LPC, 2/1/2 RPC', '2/1 LPC 2/1/2 RPC'],
      ['3/3RC, k1', '3/3 RC k1'],
      ['C6F, T3B, Tw4R, Cr3F', 'C6F T3B Tw4R Cr3F'],
      ['RT, LT, T2R', 'RT LT RT'],
      ['MB, k3', 'MB k3']
    ]
  ],
  [
    'groups in brackets',
    [
      ['[k3, k2tog] 8 times', '[k3 k2tog]x8'],
      ['(k2, p2) twice, k1', '[k2 p2]x2 k1'],
      ['(k2, p2) three times', '[k2 p2]x3'],
      ['(yo, k2) x3, k1', '[yo k2]x3 k1'],
      ['[k3, k2tog] 8x', '[k3 k2tog]x8'],
      ['[K2, p2] around', '[k2 p2]>end'],
      ['(K2, P2) to end', '[k2 p2]>end'],
      ['{k2, p2} to end', '[k2 p2]>end'],
      ['[k2, p2] to last 2 sts, k2', '[k2 p2]>-2 k2'],
      ['k3, [(yo, k2tog) 3 times, k2] twice, k1', 'k3 [[yo k2tog]x3 k2]x2 k1'],
      ['[k8, pm] 8 times', '[k8 pm]x8'],
      ['[K2tog] around', '[k2tog]>end'],
      ['[k2, p2] 5 times in all', '[k2 p2]x5']
    ]
  ],
  [
    'groups after an asterisk',
    [
      ['*k2, p2; rep from * to end of rnd', '[k2 p2]>end'],
      ['*k2, p2; rep from * to the end of the round', '[k2 p2]>end'],
      ['*K1. P1. Rep from * around.', '[k1 p1]>end'],
      ['*k2, p2; repeat from * across', '[k2 p2]>end'],
      ['*k2, p2* around', '[k2 p2]>end'],
      ['*K6, k2tog; rep from *.', '[k6 k2tog]>end'],
      ['*k2, p2; rep from * to last 2 sts, k2', '[k2 p2]>-2 k2'],
      ['*k2, p2; rep from * until 2 sts rem, k2', '[k2 p2]>-2 k2'],
      ['*k2, p2; rep from * to 2 sts before end, k2', '[k2 p2]>-2 k2'],
      ['*k2, p1; rep from *, end k2', '[k2 p1]>-2 k2'],
      ['*k2, p2; rep from *, ending with k2, p1', '[k2 p2]>-3 k2 p1'],
      ['*k3, k2tog; rep from * 7 more times', '[k3 k2tog]x8'],
      ['*k3, k2tog; rep from * 7 times more, k1', '[k3 k2tog]x8 k1'],
      ['*k3, k2tog; rep from * twice more', '[k3 k2tog]x3'],
      ['*k3, k2tog; rep from * 8 times in total', '[k3 k2tog]x8'],
      ['*k3, k2tog; rep from * a total of 8 times', '[k3 k2tog]x8'],
      ['*k3, k2tog; rep from * 7 times', '[k3 k2tog]x?7'],
      ['*k5, m1* four times, k2', '[k5 m1]x4 k2'],
      ['*k1, p1; rep from * to last 3 sts, **k1; rep from ** to end', '[k1 p1]>-3 [k1]>end'],
      ['*k3, p2, [k1, p1] twice; rep from * to end', '[k3 p2 [k1 p1]x2]>end'],
      ['*k2, p2; rep from * to m, sm, k1', '[k2 p2]>m sm k1'],
      ['*Sl 1, k1; rep from * over the 32 heel sts, turn', '[sl1 k1]>heel turn'],
      ['Sl 1, [p1, sl 1] to end', 'sl1 [p1 sl1]>end']
    ]
  ],
  [
    'targets',
    [
      ['k2tog, k to end', 'k2tog k>end'],
      ['knit to end of rnd', 'k>end'],
      ['k all sts', 'k>end'],
      ['k2, k rem sts', 'k2 k>end'],
      ['k to last 3 sts, k2tog, k1', 'k>-3 k2tog k1'],
      ['k to last 3, k2tog, k1', 'k>-3 k2tog k1'],
      ['k to within 3 sts of end, k3', 'k>-3 k3'],
      ['k until 3 sts rem, k3', 'k>-3 k3'],
      ['knit up to the last 3, k3', 'k>-3 k3'],
      ['k to 2 sts before m, k2tog, sm, k1, ssk', 'k>m-2 k2tog sm k1 ssk'],
      ['k to within 2 sts of marker, k2tog', 'k>m-2 k2tog'],
      ['k to 2 before m, k2tog', 'k>m-2 k2tog'],
      ['k to 3 sts before marker A, k2tog', 'k>A-3 k2tog'],
      ['k to m, sm, m1R, k to m, m1L, sm, k to end', 'k>m sm m1R k>m m1L sm k>end'],
      ['k to next marker, sm, p to mkr', 'k>m sm p>m'],
      ['k to BOR', 'k>BOR'],
      ['sl 1, k to 1 st before gap, ssk across gap, k1, turn', 'sl1 k>gap-1 ssk k1 turn'],
      ['k to gap, turn', 'k>gap turn'],
      ['Sl 1, p to end of heel sts, turn', 'sl1 p>heel turn'],
      ['K across the instep', 'k>instep'],
      ['k across', 'k>end'],
      ['knit plain', 'k>end'],
      ['K.', 'k>end'],
      ['Purl', 'p>end'],
      ['K2tog to end', 'k2tog>end']
    ]
  ],
  [
    'pattern as established',
    [
      ['patt to last 4 sts, k4', '~>-4 k4'],
      ['work in patt to end', '~>end'],
      ['rib to end', '~>end'],
      ['work 20 sts as panel, k4', '~20 k4'],
      ['work 3 sts in rib, p2', '~3 p2'],
      ['cont in rib as est to m, sm, k1', '~>m sm k1'],
      ['work in rib as set', '~>end'],
      ['work in patt', '~>end'],
      ['k the knits and p the purls', '~>end']
    ]
  ],
  [
    'markers',
    [
      ['k16, pm, k32, pm, k16', 'k16 pm k32 pm k16'],
      ['k2, place marker, k2', 'k2 pm k2'],
      ['k4, pm A, k20, pm B', 'k4 pm:A k20 pm:B'],
      ['k to m, rm, k to end', 'k>m rm k>end'],
      ['k to marker, remove marker, k1', 'k>m rm k1'],
      ['slip marker, k1, slm, sl m, k1', 'sm k1 sm sm k1'],
      ['k9, pm for new BOR', 'k9 pm:BOR'],
      ['k9, place marker for beginning of round', 'k9 pm:BOR'],
      ['rm, k2, pm for BOR', 'rm k2 pm:BOR'],
      ['sm A, k1, remove marker B, k1', 'sm:A k1 rm:B k1'],
      ['k5, place a locking marker in the last st, k5', 'k5 lock k5']
    ]
  ],
  [
    'turns',
    [
      ['k18, ssk, k1, turn', 'k18 ssk k1 turn'],
      ['k18, turn work', 'k18 turn'],
      ['k18. T.', 'k18 turn'],
      ['k to end, picking up wraps', 'k>end'],
      ['k to last st, w&t', 'k>-1 w&t'],
      ['k to last st, wrap and turn', 'k>-1 w&t'],
      ['k to last st, wrap next st and turn', 'k>-1 w&t'],
      ['k to last st, turn, mds', 'k>-1 turn+ds']
    ]
  ],
  [
    'edges and held stitches',
    [
      ['pick up and k 15 sts along edge of heel flap, k9', 'pu15 k9'],
      ['pick up and knit 18 sts along the other edge of the flap and k 9', 'pu18 k9'],
      ['pu & k 16, k2', 'pu16 k2'],
      ['pick up 16 sts along flap, k2', 'pu16 k2'],
      ['pick up 16-18 sts, k2', 'pu16 k2'],
      ['pu 1 st between flap and instep, k2', 'pu1 k2'],
      ['BO 6 sts, k to end', 'bo6 k>end'],
      ['bind off 6, k to end', 'bo6 k>end'],
      ['cast off all sts', 'bo'],
      ['CO 3 sts over gap, k to end', 'co3 k>end'],
      ['k2, cast on 5 sts, k2', 'k2 co5 k2'],
      ['place 13 thumb sts on waste yarn, k to end', 'hold13:thumb k>end'],
      ['sl next 12 sts onto a holder, k to end', 'hold12 k>end'],
      ['put 10 sts on hold for thumb, k1', 'hold10:thumb k1']
    ]
  ],
  [
    'even spacing',
    [
      ['K, inc 6 sts evenly', 'm1@6'],
      ['inc 4 sts evenly around', 'm1@4'],
      ['dec 4 sts evenly spaced', 'k2tog@4']
    ]
  ],
  [
    'sections by name',
    [
      ['Instep: k1, ssk, k to end. Sole: k.', 'instep{k1 ssk k>end} sole{k>end}'],
      ['Instep: work in patt. Sole: k to last 3 sts, k2tog, k1.', 'instep{~>end} sole{k>-3 k2tog k1}'],
      ['k32 instep sts, p2', 'k32 p2']
    ]
  ]
])('a row of %s', (_, cases) => {
  test.each(cases)('%s', (text, body) => {
    expect(bodyOf(text)).toBe(body);
  });
});

describe('a row for several sizes', () => {
  test.each<readonly [string, number, string]>([
    ['K4 (6, 8), pm, k to end', 3, 'k4|6|8 pm k>end'],
    ['[K6[7, 8], k2tog] five times', 3, '[k6|7|8 k2tog]x5'],
    ['[k10 (-, 14), k2tog] 4 times', 3, '[k10|-|14 k2tog]x4'],
    ['K2 (0, 1), p2', 3, 'k2|0|1 p2'],
    ['k 15 (17, 19) heel sts, pick up and k 14 (15, 16) sts along flap', 3, 'k15|17|19 pu14|15|16'],
    ['k48[56:64]', 3, 'k48|56|64'],
    ['k48 (56:64), p1', 3, 'k48|56|64 p1'],
    ['k60 (64) (68), p1', 3, 'k60|64|68 p1'],
    ['k60 (64, 68) [72, 76], p1', 5, 'k60|64|68|72|76 p1'],
    ['work 20 (20) 24 (24) sts in rib, p1', 4, '~20|20|24|24 p1'],
    ['[k2, p2] 3 (4, 5) times', 3, '[k2 p2]x3|4|5'],
    ['*k2, p2; rep from * 3 (4, 5) more times', 3, '[k2 p2]x4|5|6'],
    ['k to last 3 (4, 5) sts, k2tog', 3, 'k>-3|4|5 k2tog']
  ])('%s', (text, sizes, body) => {
    expect(bodyOf(text, sizes)).toBe(body);
  });
});
