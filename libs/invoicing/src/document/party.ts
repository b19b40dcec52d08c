/** An identifier with the register it comes from (ISO 6523 code such as '0088'), where the register is known. */
export interface SchemedId {
  readonly id: string;
  readonly schemeId?: string;
}

export interface PostalAddress {
  /** Street and further lines, three at most (BT-35, BT-36, BT-162). */
  readonly lines: readonly string[];
  readonly postcode?: string;
  readonly city?: string;
  readonly region?: string;
  /** ISO 3166-1, two letters. */
  readonly countryCode: string;
}

/** Seller, buyer or tax representative as printed and as sent. */
export interface InvoiceParty {
  /** Full name (BT-27, BT-44). */
  readonly name: string;
  /** Name over the door, where it differs (BT-28, BT-45). */
  readonly tradingName?: string;
  readonly address: PostalAddress;
  /** VAT identification number with its country prefix (BT-31, BT-48, BT-63). */
  readonly vatId?: string | undefined;
  /** Local tax number of those without a VAT number (BT-32); sellers only. */
  readonly taxRegistrationId?: string;
  /** Company register number (BT-30, BT-47). */
  readonly legalRegistration?: SchemedId;
  /** Further legal facts, such as the share capital (BT-33); sellers only. */
  readonly legalNote?: string;
  /** Where structured invoices are delivered (BT-34, BT-49); the scheme is needed. */
  readonly electronicAddress?: { readonly id: string; readonly schemeId: string };
  readonly contact?: { readonly name?: string; readonly phone?: string; readonly email?: string };
}
