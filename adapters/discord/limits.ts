/** The platform's published limits, in characters (UTF-16 units, which are never fewer than its own count). */
export const limits = {
  content: 2000,
  description: 4096,
  fields: 25,
  fieldName: 256,
  fieldValue: 1024,
  footer: 2048,
  /** Summed over everything that is text in an embed. */
  embed: 6000,
  alt: 1024,
  customId: 100,
  buttonLabel: 80,
  buttonsInRow: 5,
  selectOptions: 25,
  modalTitle: 45,
  modalInputs: 5,
  inputLabel: 45,
  inputDescription: 100,
  inputValue: 4000,
  placeholder: 100,
  options: 25,
  choices: 25,
  choice: 100,
  commandDescription: 100,
  commandCharacters: 8000,
} as const;

/** After this the platform gives up on an answer; half a second before it, deferring would be too late on a slow line. */
export const firstAnswer_ms = 3000;
/** Typical values, where there are any, stand for an answer that is not there by now. */
export const early_ms = 700;
/** An answer that is not there by now is deferred. */
export const defer_ms = 1500;
/** How long an answer can still be edited. */
export const tokenLife_ms = 15 * 60_000;
