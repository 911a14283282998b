/** Long work that can be left off between its steps and gone on with. */
export type Steps<Done> = Generator<undefined, Done, undefined>;

/** Does all steps without a break. */
export function atOnce<Done>(steps: Steps<Done>): Done {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}
