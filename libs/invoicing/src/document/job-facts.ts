/** What the page says about the vehicle and the work, as it was known at issue. */
export interface JobOnDocument {
  readonly jobNumber: string;
  readonly vehicle?: {
    readonly registration?: string;
    readonly vin?: string;
    readonly makeAndModel?: string;
    readonly odometer?: { readonly value: string; readonly unit: 'km' | 'mi' };
  };
  readonly workDone: readonly string[];
  readonly found: readonly string[];
  readonly advice: readonly string[];
  readonly nextDue: readonly { readonly what: string; readonly date?: string; readonly odometer?: string }[];
  /** Proof that was not there yet at issue and by when it is owed. */
  readonly proofOwed?: { readonly what: string; readonly by: string };
  /** Stands beside the customer's legal rights, never instead. */
  readonly guarantee?: string;
}
