import { assert, fail, type Problem, succeed } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import type {
  NumberOf,
  Starter,
  StarterName,
  StarterNumber,
  StarterRange,
  StarterStart,
  TypedNumbers,
} from "./types.ts";

/** A starter before its numbers are checked: `draw` may count on all of them to be in their ranges. */
interface Definition<Name extends string> {
  readonly name: StarterName;
  readonly word: string;
  readonly explains: string;
  readonly numbers: readonly StarterNumber<Name>[];
  readonly draw: (numberOf: NumberOf<Name>, start: StarterStart) => Project;
}

/**
 * A starter that draws only when every number lies in its range. A number whose range depends on one that is
 * itself out of range is not judged: the first mistake is told, not what follows from it.
 */
export function defineStarter<Name extends string>(definition: Definition<Name>): Starter {
  const { name, word, explains, numbers, draw } = definition;
  return {
    name,
    word,
    explains,
    numbers: numbers.map((number) => ({
      ...number,
      range: (numberOf) => number.range(numberOf),
    })),
    make: (typed, start) => {
      const problems = problemsOf(numbers, typed);
      return problems.length > 0 ? fail(...problems) : succeed(draw(readFrom(typed), start));
    },
  };
}

function problemsOf<Name extends string>(
  numbers: readonly StarterNumber<Name>[],
  typed: TypedNumbers,
): readonly Problem[] {
  const wrong = new Set<string>();
  return numbers.flatMap((number): readonly Problem[] => {
    const range = rangeOf(number, typed, wrong);
    const value = typed[number.name] ?? Number.NaN;
    if (range === undefined || (value >= range.least && value <= range.most)) return [];
    wrong.add(number.name);
    return [
      {
        kind: "starter-number-out-of-range",
        place: { setting: `starter.${number.name}` },
        name: number.word,
        unit: number.unit,
        value,
        ...range,
      },
    ];
  });
}

/** The range of a number; undefined where it depends on a number that is wrong. */
function rangeOf<Name extends string>(
  number: StarterNumber<Name>,
  typed: TypedNumbers,
  wrong: ReadonlySet<string>,
): StarterRange | undefined {
  let leans = false;
  const read = readFrom<Name>(typed);
  const range = number.range((name) => {
    if (!wrong.has(name)) return read(name);
    leans = true;
    return Number.NaN;
  });
  return leans ? undefined : range;
}

const readFrom =
  <Name extends string>(typed: TypedNumbers): NumberOf<Name> =>
  (name) => {
    const value = typed[name];
    assert(value !== undefined, `the starter has the number ${name}`);
    return value;
  };
