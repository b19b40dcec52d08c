import { type InvoiceDocument } from '../document/invoice-document.ts';
import { type CheckStage, type InvoiceRules } from './invoice-rules.ts';
import { missingInFull } from './missing-in-full.ts';
import { missingInSimplified } from './missing-in-simplified.ts';
import { type MissingContent, places } from './missing-content.ts';

/**
 * What Directive 2006/112/EC wants on the document and is not there: art. 226 for a full invoice, art. 226b for a simplified
 * one under the set limit, art. 219 for credit notes, art. 230 for the currency of the VAT. Each entry says in words what is
 * missing and where to enter it.
 *
 * Sources: art. 226 points 1 to 7, art. 220a and art. 226b read in published copies of the consolidated text; art. 226 points
 * 7a to 15, art. 219, 230 and 238 from memory. Local law can ask for more.
 *
 * @param document composed, before issue or after
 * @param options the country's rules and whether number and date must be there
 */
export function missingContents(document: InvoiceDocument, options: { rules: InvoiceRules; stage: CheckStage }): MissingContent[] {
  const own = document.form === 'simplified' ? missingInSimplified(document, options.rules) : missingInFull(document, options.rules);
  return [...missingAtIssue(document, options.stage), ...own, ...missingInCorrection(document)];
}

function missingAtIssue(document: InvoiceDocument, stage: CheckStage): MissingContent[] {
  if (stage === 'before-issue') return [];
  const missing: MissingContent[] = [];
  const where = places.draft;
  const simplified = document.form === 'simplified';
  if (document.issueDate === null)
    missing.push({
      field: 'issueDate',
      what: 'The date of issue',
      where,
      basis: simplified ? 'art. 226b(a)' : 'art. 226(1)',
      mark: 'read',
    });
  if (document.number === null && !simplified)
    missing.push({ field: 'number', what: 'The number of the document', where, basis: 'art. 226(2)', mark: 'read' });
  return missing;
}

function missingInCorrection(document: InvoiceDocument): MissingContent[] {
  if (document.kind !== 'credit-note') return [];
  const where = places.draft;
  const missing: MissingContent[] = [];
  if (document.preceding.length === 0)
    missing.push({
      field: 'preceding',
      what: 'The number of the invoice that is corrected',
      where,
      basis: 'art. 219',
      mark: 'from-memory',
    });
  if ((document.correctionReason ?? '').trim() === '')
    missing.push({ field: 'correctionReason', what: 'What is corrected and why', where, basis: 'art. 219 and 226b(e)', mark: 'read' });
  return missing;
}
