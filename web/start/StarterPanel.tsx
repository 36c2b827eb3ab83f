import { useMemo, useState } from "react";
import { formatMm, type Problem, THIN_SPACE, wordProblem } from "../../core/foundation/index.ts";
import { STARTERS, type Starter, type TypedNumbers, usualNumbers } from "../../core/starters/index.ts";
import { PlanAndSide, PlanThumbnail, sizeOverAll, type TrayPicture, trayPicture } from "../drawings/index.ts";
import { makeFromStarter } from "../files/index.ts";
import { StarterField } from "./StarterField.tsx";

/** The document's own date and name do not show in a picture. */
const FOR_PICTURE = { id: "picture", issuedOn: "2026-01-01" };

/** A tray from a few numbers: which one, its numbers, and beside them what they make. */
export function StarterPanel() {
  const [starter, setStarter] = useState(STARTERS[0]);
  const [typed, setTyped] = useState<Readonly<Record<string, TypedNumbers>>>({});
  if (!starter) return null;
  const numbers = typed[starter.name] ?? usualNumbers(starter);
  return (
    <section className="starter-panel" aria-labelledby="starter-title">
      <h2 id="starter-title">Begin with a few numbers</h2>
      <fieldset className="starter-choices">
        <legend className="visually-hidden">What to begin with</legend>
        {STARTERS.map((each) => (
          <label key={each.name} data-testid={`starter-${each.name}`}>
            <input type="radio" name="starter" checked={each === starter} onChange={() => setStarter(each)} />
            <StarterSign starter={each} />
            <span>{each.word}</span>
          </label>
        ))}
      </fieldset>
      <StarterForm
        key={starter.name}
        starter={starter}
        numbers={numbers}
        onChange={(changed) => setTyped({ ...typed, [starter.name]: changed })}
      />
    </section>
  );
}

/** What a starter makes of its usual numbers. */
function StarterSign({ starter }: { readonly starter: Starter }) {
  const picture = useMemo(() => {
    const made = starter.make(usualNumbers(starter), FOR_PICTURE);
    return made.ok ? trayPicture(made.value) : undefined;
  }, [starter]);
  return (
    <span className="starter-sign">
      <PlanThumbnail picture={picture} />
    </span>
  );
}

interface StarterFormProps {
  readonly starter: Starter;
  readonly numbers: TypedNumbers;
  readonly onChange: (numbers: TypedNumbers) => void;
}

function StarterForm({ starter, numbers, onChange }: StarterFormProps) {
  const made = useMemo(() => starter.make(numbers, FOR_PICTURE), [starter, numbers]);
  const [lastPicture, setLastPicture] = useState<TrayPicture>();
  const picture = useMemo(() => (made.ok ? trayPicture(made.value) : undefined), [made]);
  if (picture !== undefined && picture !== lastPicture) setLastPicture(picture);
  const problems = made.ok ? [] : made.problems;
  return (
    <form
      className="starter-form"
      onSubmit={(event) => {
        event.preventDefault();
        makeFromStarter(starter, numbers);
      }}
    >
      <div className="starter-numbers">
        <p>{starter.explains}</p>
        {starter.numbers.map((number) => (
          <StarterField
            key={number.name}
            number={number}
            value={numbers[number.name] ?? number.usual}
            trouble={wordsFor(number.name, problems)}
            onChange={(value) => onChange({ ...numbers, [number.name]: value })}
          />
        ))}
      </div>
      <div className="starter-result">
        <StarterPicture starter={starter} picture={picture ?? lastPicture} isCurrent={made.ok} />
        <div className="starter-make">
          <button type="submit" className="primary" data-testid="make-starter" disabled={!made.ok}>
            Make it
          </button>
          <p className="pencil">
            {made.ok
              ? "Sections, fences and edges as if you had drawn them: everything can be changed afterwards."
              : "Put the marked number right first."}
          </p>
        </div>
      </div>
    </form>
  );
}

/** The live picture; while a number is wrong the last good one stays, and says so. */
function StarterPicture({
  starter,
  picture,
  isCurrent,
}: {
  readonly starter: Starter;
  readonly picture: TrayPicture | undefined;
  readonly isCurrent: boolean;
}) {
  const size = picture && sizeOverAll(picture);
  if (!picture || !size) return null;
  const words = `${formatMm(size.lengthMm)} × ${formatMm(size.widthMm)}${THIN_SPACE}mm over all`;
  return (
    <figure
      className="starter-picture"
      data-stale={isCurrent ? undefined : "true"}
      data-testid="starter-picture"
    >
      <PlanAndSide picture={picture} words={`${starter.word} in plan and side view, ${words}`} />
      <figcaption className="pencil">{isCurrent ? words : `Before the last number: ${words}`}</figcaption>
    </figure>
  );
}

const wordsFor = (name: string, problems: readonly Problem[]): string | undefined =>
  problems.filter(({ place }) => place.setting === `starter.${name}`).map(wordProblem)[0];
