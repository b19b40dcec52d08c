import { createHash } from 'node:crypto';
import { AFRelationship, embedFacturX, PDFDict, PDFDocument, PDFHexString, PDFName } from '@cantoo/pdf-lib';

const ATTACHED_NAME = 'factur-x.xml';

/** Roles that the browser writes and PDF 1.7 does not know: told what they stand for. */
const FOREIGN_ROLES: Readonly<Record<string, string>> = { Strong: 'Span', Em: 'Span' };

/**
 * A tagged PDF with the structured invoice (CII, profile EN 16931) attached to it, structured as PDF/A-3b: output intent, XMP, file
 * identifier, the attachment as an alternative of the page. No validator was at hand, so nothing is certified.
 *
 * The identifier comes from the contents and the dates from the issue: the same page and XML give the same file.
 */
export async function hybridPdf(page: Uint8Array, { xml, issuedAt }: { xml: Uint8Array; issuedAt: Date }): Promise<Uint8Array> {
  const document = await PDFDocument.load(page, { updateMetadata: false });
  const { context, catalog } = document;
  const id = PDFHexString.of(createHash('sha256').update(page).update(xml).digest('hex').slice(0, 32));
  context.trailerInfo.ID = context.obj([id, id]);
  document.setProducer('Runwarm');
  document.setCreator('Runwarm');
  document.setCreationDate(issuedAt);
  document.setModificationDate(issuedAt);
  await embedFacturX(document, xml, {
    fileName: ATTACHED_NAME,
    description: 'The same invoice in structured form (EN 16931, CII)',
    afRelationship: AFRelationship.Alternative,
    creationDate: issuedAt,
    modificationDate: issuedAt,
  });
  const tags = catalog.lookupMaybe(PDFName.of('StructTreeRoot'), PDFDict);
  tags?.set(PDFName.of('RoleMap'), context.obj(FOREIGN_ROLES));
  return document.save({ useObjectStreams: false });
}
