import { expect, it } from "vitest";
import { latestWins } from "../../../web/worker/index.ts";

it("never lets more than one question wait, and the newest takes the place of an older one", async () => {
  const waiting: ((answer: string) => void)[] = [];
  const asked: number[] = [];
  const told: [string, boolean][] = [];
  const ask = latestWins(
    (question: number) => {
      asked.push(question);
      return new Promise<string>((resolve) => waiting.push(resolve));
    },
    { onResult: (answer, isLast) => told.push([answer, isLast]), onFailure: () => {} },
  );
  const answer = async (text: string) => {
    waiting.shift()?.(text);
    await new Promise((resolve) => setTimeout(resolve));
  };
  for (const question of [1, 2, 3]) ask(question);
  await answer("to 1");
  await answer("to 3");
  ask(4);
  await answer("to 4");
  expect(asked).toEqual([1, 3, 4]);
  expect(told).toEqual([
    ["to 1", false],
    ["to 3", true],
    ["to 4", true],
  ]);
});
