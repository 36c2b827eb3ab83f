import { type Affine, after, IDENTITY } from "./affine.ts";
import { numbersIn } from "./numbers-in.ts";

/** The change that a `transform` attribute makes (SVG 1.1 §7.6); undefined where it cannot be read. */
export function parseTransform(text: string): Affine | undefined {
  const rest = text.replaceAll(/([a-z]+)\s*\(([^()]*)\)[\s,]*/gi, "").trim();
  if (rest !== "" && rest.toLowerCase() !== "none") return undefined;
  let change: Affine = IDENTITY;
  for (const [, name = "", list = ""] of text.matchAll(/([a-z]+)\s*\(([^()]*)\)/gi)) {
    const numbers = numbersIn(list);
    const step = numbers && stepOf(name, numbers);
    if (!step) return undefined;
    change = after(change, step);
  }
  return change;
}

function stepOf(name: string, numbers: readonly number[]): Affine | undefined {
  const [first, second, third] = numbers;
  if (first === undefined) return undefined;
  switch (name) {
    case "matrix": {
      const [a, b, c, d, e, f] = numbers;
      if (b === undefined || c === undefined || d === undefined || e === undefined || f === undefined)
        return undefined;
      return numbers.length === 6 && a !== undefined ? [a, b, c, d, e, f] : undefined;
    }
    case "translate":
      return [1, 0, 0, 1, first, second ?? 0];
    case "scale":
      return [first, 0, 0, second ?? first, 0, 0];
    case "rotate": {
      const [cos, sin] = [Math.cos(toRad(first)), Math.sin(toRad(first))];
      const turn: Affine = [cos, sin, -sin, cos, 0, 0];
      if (second === undefined) return turn;
      const [x, y] = [second, third ?? 0];
      return after([1, 0, 0, 1, x, y], after(turn, [1, 0, 0, 1, -x, -y]));
    }
    case "skewX":
      return [1, 0, Math.tan(toRad(first)), 1, 0, 0];
    case "skewY":
      return [1, Math.tan(toRad(first)), 0, 1, 0, 0];
    default:
      return undefined;
  }
}

const toRad = (degrees: number): number => (degrees * Math.PI) / 180;
