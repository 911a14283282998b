/** From this length on a job has so many rows that it takes a while to work them out and to show them. */
const longText = 100_000;

/** Whether a job's text is long enough to be opened with care. */
export function isLongText({ length }: string): boolean {
  return length >= longText;
}
