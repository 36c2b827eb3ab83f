interface Listener<Answer> {
  /** `isLast` is false while a newer question waits. */
  readonly onResult: (answer: Answer, isLast: boolean) => void;
  readonly onFailure: (error: unknown, isLast: boolean) => void;
}

/**
 * Asks one question at a time. A question asked while another is being answered waits; a newer one takes its
 * place, so never more than one waits. Every answer that arrives is told, in the order of asking; an answer that is
 * undefined was left off, since a newer question waited (`isOld`), and is told to nobody.
 */
export function latestWins<Question, Answer>(
  answer: (question: Question, isOld: () => boolean) => Promise<Answer | undefined>,
  listener: Listener<Answer>,
): (question: Question) => void {
  let isBusy = false;
  let waiting: { readonly question: Question } | undefined;
  const isLast = () => waiting === undefined;

  const run = async (question: Question) => {
    isBusy = true;
    try {
      const answered = await answer(question, () => !isLast());
      if (answered !== undefined) listener.onResult(answered, isLast());
    } catch (error) {
      listener.onFailure(error, isLast());
    }
    isBusy = false;
    const next = waiting;
    waiting = undefined;
    if (next !== undefined) void run(next.question);
  };

  return (question) => {
    if (isBusy) waiting = { question };
    else void run(question);
  };
}
