/** What a page of a PDF draws, as its operators stand in the file. */
import { decodePDFRawStream, PDFDocument, PDFRawStream } from 'pdf-lib';

export async function contents(bytes: Uint8Array, index = 0): Promise<string> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const { node } = document.getPage(index);
  const streams = node.normalizedEntries().Contents!.asArray();
  return streams
    .map((ref) => document.context.lookup(ref))
    .filter((s) => s instanceof PDFRawStream)
    .map((s) => new TextDecoder('latin1').decode(decodePDFRawStream(s).decode()))
    .join('\n');
}
