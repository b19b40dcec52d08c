export { creditLeft, type CreditLeft } from './credit/credit-left.ts';
export { creditNote } from './credit/credit-note.ts';
export { type CreditItem, type CreditNote, type CreditRequest } from './credit/credit-request.ts';
export { type LineToCredit, linesLeft } from './credit/lines-left.ts';
export { outstanding } from './credit/outstanding.ts';
export { type DepositForm, type IssuedDeposit, type ReceivedMoney } from './deposit/deposit.ts';
export { depositDeduction, type DepositDeduction, type DepositDeductionRequest } from './deposit/deposit-deduction.ts';
export { depositLines, type DepositLines } from './deposit/deposit-lines.ts';
export { type GrossSplit, splitGross } from './deposit/split-gross.ts';
export { composeDocument } from './document/compose-document.ts';
export { freezeDocument, thawDocument } from './document/frozen-json.ts';
export {
  type DocumentForm,
  type DocumentKind,
  type DocumentReference,
  documentTypeCodes,
  type ExemptionReason,
  type InvoiceDocument,
  type InvoiceDraft,
  type IsoDate,
  type IssuedDocument,
  type LegalMark,
  type Prepayment,
  type TaxAdjustment,
} from './document/invoice-document.ts';
export {
  type DocumentAdjustment,
  type DraftLine,
  type InvoiceLine,
  type LineKind,
  type PriceAdjustment,
  type TaxTreatment,
} from './document/invoice-line.ts';
export { type JobOnDocument } from './document/job-facts.ts';
export { type InvoiceParty, type PostalAddress, type SchemedId } from './document/party.ts';
export { type PaymentMeans, paymentMeansCodes, type PaymentMethod } from './document/payment-means.ts';
export { type Unit, units } from './document/units.ts';
export { draftLines } from './draft/draft-lines.ts';
export { type DraftedWork, type HeldPackage, type NotBilled } from './draft/drafted.ts';
export {
  type Authorisation,
  type ConsumableFact,
  type CoolantFact,
  type CoolantPour,
  type CoolantProduct,
  type JobWork,
  type LabourFact,
  type PartFact,
  type ProductPour,
  type WasteFact,
  type WorkPackage,
} from './draft/job-work.ts';
export { InvoicingError, type InvoicingErrorCode } from './invoicing-error.ts';
export { type CheckStage, type InvoiceRules } from './legal/invoice-rules.ts';
export { type MissingContent, type SourceMark } from './legal/missing-content.ts';
export { missingContents } from './legal/missing-contents.ts';
export { structuredProblems } from './legal/structured-problems.ts';
export { type FieldError, type Outcome } from './outcome.ts';
export { totals, type TotalsAnswer } from './totals/totals.ts';
export { type Totals, type TotalsAdjustmentInput, type TotalsInput, type TotalsLineInput, type VatRow } from './totals/totals-input.ts';
export { vatCategories, type VatCategory, type VatCategoryRule } from './totals/vat-category.ts';
export { toCii } from './xml/cii/to-cii.ts';
export { coreProfile, type XmlProfile } from './xml/profile.ts';
export { type DocumentNote, documentNotes } from './xml/structured-facts.ts';
export { toUbl } from './xml/ubl/to-ubl.ts';
