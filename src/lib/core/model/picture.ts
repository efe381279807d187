/**
 * One moment as a drawing: where every needle, stitch, marker and label stands. Plain data; nothing in it moves or is
 * drawn yet. Units are those of the picture's own width and height (a stitch is 7.5 to 16 wide); y grows downwards;
 * angles are in degrees, clockwise. Everything has an id that stays the same from one picture to the next.
 */

import type { NeedleState } from './moment.ts';
import type { Face, Loop } from './stitch.ts';

/** Paper and ink, the same in the dark, or pure black and white. */
export type Theme = 'light' | 'dark' | 'print';

/** A place in the picture. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A thing in the picture. */
export interface Drawn {
  /** "stitch:12", "needle:A", "marker:m1"; unique within a picture. */
  readonly id: string;
  /** 0 to 1; 1 except on the way from one picture to another. */
  readonly opacity: number;
}

/** A loop on a needle with the fabric that hangs from it. At angle 0 the fabric hangs down and the round goes to the left. */
export interface DrawnStitch extends Drawn, Point {
  readonly angle: number;
  /** Width of a stitch, the unit of its shape. */
  readonly size: number;
  /** 1, or -1 when the shape is turned left to right. */
  readonly flip: number;
  readonly face: Face;
  readonly loop: Loop;
  readonly crossed: boolean;
  /** Index of the yarn tone, 0 or more: equal for stitches of one section. */
  readonly tone: number;
  /** True when its needle rests: drawn thinner. */
  readonly quiet: boolean;
  /** Rows of fabric below the loop. */
  readonly rows: number;
  /** Index of its track. */
  readonly track: number;
  /** How far along its track it sits, 0 to 1. */
  readonly along: number;
}

/** What an end of a shaft is: a point to knit with, or the joint with a cord. */
export type ShaftEnd = 'point' | 'joint';

/** A straight, stiff piece: a whole double-pointed needle, or a tip of another one. */
export interface DrawnShaft extends Drawn, Point {
  readonly angle: number;
  readonly length: number;
  readonly thickness: number;
  readonly left: ShaftEnd;
  readonly right: ShaftEnd;
  readonly state: NeedleState;
}

/** A cord, as points of a smooth line. */
export interface DrawnCord extends Drawn {
  readonly points: readonly Point[];
  readonly width: number;
  readonly state: NeedleState;
}

/** The yarn from the stitch worked last, as points of a smooth line. */
export interface DrawnYarn extends Drawn {
  readonly points: readonly Point[];
  readonly width: number;
  readonly tone: number;
}

/** A ring on a needle, or a locking marker in a stitch. */
export interface DrawnMarker extends Drawn, Point {
  readonly kind: 'ring' | 'locking';
  readonly angle: number;
  /** Width of a stitch, the unit of its shape. */
  readonly size: number;
  /** True for the beginning of round. */
  readonly bor: boolean;
}

/** A thin line: the bracket of a section, from a label to what it names, the pole of a flag, the direction of work. */
export interface DrawnLine extends Drawn {
  readonly kind: 'bracket' | 'leader' | 'pole' | 'arrow';
  /** Corners of the line; an arrow points to the last one. */
  readonly points: readonly Point[];
}

/** A stretch of text in one weight. */
export interface Run {
  readonly text: string;
  readonly strong: boolean;
}

/** Text in a box, always upright. `x` and `y` are the middle of the box. */
export interface DrawnLabel extends Drawn, Point {
  readonly kind: 'needle' | 'section' | 'marker' | 'bor' | 'note';
  readonly width: number;
  readonly height: number;
  /** Font size. */
  readonly size: number;
  readonly lines: readonly (readonly Run[])[];
}

/** A flag on a pole. `x` and `y` are the middle of its cloth. */
export interface DrawnFlag extends Drawn, Point {
  /** Solid for the feeding needle or tip, outlined for the working one. */
  readonly solid: boolean;
  /** 1 when it flies to the right of its pole, -1 to the left. */
  readonly flies: number;
  readonly width: number;
  readonly height: number;
  readonly size: number;
  readonly text: string;
}

/** The line on which the stitches of one needle sit, from its first stitch to its last, and the way there and on. */
export interface DrawnTrack {
  readonly points: readonly Point[];
}

/** A whole drawing. */
export interface Picture {
  readonly theme: Theme;
  /** True when it is drawn for a left-handed knitter. */
  readonly mirrored: boolean;
  readonly width: number;
  readonly height: number;
  /** What is drawn, in a line. */
  readonly title: string;
  /** What is to be seen, in a few sentences. */
  readonly description: string;
  /** Middle of the ring. */
  readonly centre: Point;
  /** One for each needle with stitches, N1 first. */
  readonly tracks: readonly DrawnTrack[];
  /** Index of the track that lies nearest the reader; 0 when there is none. */
  readonly front: number;
  readonly shafts: readonly DrawnShaft[];
  readonly cords: readonly DrawnCord[];
  readonly stitches: readonly DrawnStitch[];
  readonly markers: readonly DrawnMarker[];
  readonly yarns: readonly DrawnYarn[];
  readonly lines: readonly DrawnLine[];
  readonly labels: readonly DrawnLabel[];
  readonly flags: readonly DrawnFlag[];
}
