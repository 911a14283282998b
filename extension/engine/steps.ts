/** Long work that can be left off between its steps and gone on with. */
export type Steps<Done> = Generator<undefined, Done, undefined>;

/** Work that is done when its outcome is asked for first, and then no more. */
export function whenAsked<Found>(work: () => Found): () => Found {
  let done: { readonly found: Found } | undefined;
  return () => {
    done ??= { found: work() };
    return done.found;
  };
}

/** Does all steps without a break. */
export function atOnce<Done>(steps: Steps<Done>): Done {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}
