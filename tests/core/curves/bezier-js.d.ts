/** The part of bezier-js that the tests use as an independent measure of length. */
declare module "bezier-js" {
  export class Bezier {
    constructor(points: readonly { readonly x: number; readonly y: number }[]);
    length(): number;
  }
}
