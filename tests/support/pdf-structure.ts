import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFStream,
  PDFString,
  decodePDFRawStream,
} from '@cantoo/pdf-lib';

export interface PdfStructure {
  /** Standard structure types and those of the role map are known. */
  roles: readonly string[];
  roleMap: Readonly<Record<string, string>>;
  isMarked: boolean;
  lang: string | undefined;
  title: string | undefined;
  showsTitle: boolean;
  /** Components of the output intent's profile. */
  outputIntentN: number | undefined;
  xmp: string;
  hasId: boolean;
  attachments: readonly { name: string; relationship: string; bytes: Uint8Array; isAssociated: boolean }[];
  /** Fonts without an embedded file. */
  bareFonts: readonly string[];
  /** Things that PDF/A-3b forbids and a browser can write. */
  hasTransparency: boolean;
}

const nameOf = (value: unknown): string => (value instanceof PDFName ? value.decodeText() : String(value));
const textOf = (value: unknown): string | undefined =>
  value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : undefined;

function bytesOf(stream: PDFStream): Uint8Array {
  return stream instanceof PDFRawStream ? decodePDFRawStream(stream).decode() : stream.getContents();
}

/** What a PDF says of itself, read from its objects. */
export async function pdfStructure(pdf: Uint8Array): Promise<PdfStructure> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const { context, catalog } = document;
  const dicts = context.enumerateIndirectObjects().flatMap(([, object]) => {
    if (object instanceof PDFDict) return [object];
    return object instanceof PDFStream ? [object.dict] : [];
  });
  const tags = catalog.lookupMaybe(PDFName.of('StructTreeRoot'), PDFDict);
  const roles = dicts
    .filter((dict) => dict.has(PDFName.of('S')) && dict.has(PDFName.of('P')))
    .map((dict) => nameOf(dict.lookup(PDFName.of('S'))));
  const intents = catalog.lookupMaybe(PDFName.of('OutputIntents'), PDFArray);
  const profile = intents?.lookup(0, PDFDict).lookup(PDFName.of('DestOutputProfile'));
  const metadata = catalog.lookup(PDFName.of('Metadata'));
  const associated = catalog.lookupMaybe(PDFName.of('AF'), PDFArray);
  const specs = dicts.filter((dict) => nameOf(dict.lookup(PDFName.of('Type'))) === 'Filespec');
  const descriptors = dicts.filter((dict) => nameOf(dict.lookup(PDFName.of('Type'))) === 'FontDescriptor');
  const roleMap = tags?.lookupMaybe(PDFName.of('RoleMap'), PDFDict);
  const preferences = catalog.lookupMaybe(PDFName.of('ViewerPreferences'), PDFDict);
  return {
    roles: [...new Set(roles)].sort(),
    roleMap: Object.fromEntries((roleMap?.entries() ?? []).map(([key, value]) => [key.decodeText(), nameOf(value)])),
    isMarked: String(catalog.lookupMaybe(PDFName.of('MarkInfo'), PDFDict)?.lookup(PDFName.of('Marked'))) === 'true',
    lang: textOf(catalog.lookup(PDFName.of('Lang'))),
    title: document.getTitle(),
    showsTitle: String(preferences?.lookup(PDFName.of('DisplayDocTitle'))) === 'true',
    outputIntentN: profile instanceof PDFStream ? Number(String(profile.dict.lookup(PDFName.of('N')))) : undefined,
    xmp: metadata instanceof PDFStream ? new TextDecoder().decode(bytesOf(metadata)) : '',
    hasId: context.trailerInfo.ID !== undefined,
    attachments: specs.map((spec) => {
      const file = spec.lookup(PDFName.of('EF'), PDFDict).lookup(PDFName.of('F'), PDFStream);
      return {
        name: textOf(spec.lookup(PDFName.of('UF'))) ?? '',
        relationship: nameOf(spec.lookup(PDFName.of('AFRelationship'))),
        bytes: bytesOf(file),
        isAssociated: Array.from({ length: associated?.size() ?? 0 }, (_, index) => associated?.lookup(index)).includes(spec),
      };
    }),
    bareFonts: descriptors
      .filter((dict) => !['FontFile', 'FontFile2', 'FontFile3'].some((key) => dict.has(PDFName.of(key))))
      .map((dict) => nameOf(dict.lookup(PDFName.of('FontName')))),
    hasTransparency: dicts.some((dict) => dict.has(PDFName.of('SMask')) || isFaint(dict, 'ca') || isFaint(dict, 'CA')),
  };
}

function isFaint(dict: PDFDict, key: string): boolean {
  const value = dict.lookup(PDFName.of(key));
  return value !== undefined && dict.has(PDFName.of('BM')) && Number(String(value)) < 1;
}

/** Structure types of PDF 1.7 (ISO 32000-1, 14.8.4) that a browser writes. From memory. */
export const STANDARD_ROLES: readonly string[] = [
  ...['Document', 'Part', 'Art', 'Sect', 'Div', 'BlockQuote', 'Caption', 'TOC', 'TOCI', 'Index', 'NonStruct', 'Private'],
  ...['P', 'H', 'H1', 'H2', 'H3', 'H4', 'H5', 'H6', 'L', 'LI', 'Lbl', 'LBody'],
  ...[
    'Table',
    'TR',
    'TH',
    'TD',
    'THead',
    'TBody',
    'TFoot',
    'Span',
    'Quote',
    'Note',
    'Reference',
    'Link',
    'Annot',
    'Figure',
    'Formula',
    'Form',
  ],
];
