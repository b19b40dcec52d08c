import { type IssuedDocument } from '../../document/invoice-document.ts';
import { paymentMeansCodes } from '../../document/payment-means.ts';
import { structuredMeans } from '../structured-facts.ts';
import { branch, leaf, type XmlNode } from '../xml-node.ts';

/** How to pay (BG-16) and by when. On a credit note UBL keeps the date here, since its head has none. */
export function ublPayment(document: IssuedDocument): XmlNode[] {
  const dueHere = document.kind === 'credit-note' ? document.dueDate : undefined;
  const means = structuredMeans(document).flatMap(({ method, words, account }) =>
    branch(
      'cac:PaymentMeans',
      leaf('cbc:PaymentMeansCode', paymentMeansCodes[method], words === undefined ? {} : { name: words }),
      leaf('cbc:PaymentDueDate', dueHere),
      leaf('cbc:PaymentID', document.remittance),
      branch(
        'cac:PayeeFinancialAccount',
        leaf('cbc:ID', account?.iban ?? account?.number),
        leaf('cbc:Name', account?.name),
        branch('cac:FinancialInstitutionBranch', leaf('cbc:ID', account?.bic)),
      ),
    ),
  );
  return [...means, ...branch('cac:PaymentTerms', leaf('cbc:Note', document.paymentTerms))];
}
