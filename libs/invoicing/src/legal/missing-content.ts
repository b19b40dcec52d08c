/** How a rule is known. `read`: its text was read. `from-memory`: it was not read again for this project. */
export type SourceMark = 'read' | 'from-memory';

/** Something that must be on the document and is not. */
export interface MissingContent {
  readonly field: string;
  /** What is missing, in words. */
  readonly what: string;
  /** Where it is entered. */
  readonly where: string;
  /** The rule, such as 'art. 226(5)' or 'BR-CO-25'. */
  readonly basis: string;
  readonly mark: SourceMark;
}

/** Places where things are entered, named as in the tool. */
export const places = {
  workshop: 'Office, workshop details',
  customer: 'Counter, customer',
  draft: 'Till, this draft',
  settings: 'Office, invoice settings',
} as const;
