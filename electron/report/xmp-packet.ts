/** The document's description of itself as an XMP packet (ISO 16684-1), properties of dc, xmp and pdf. */
import type { ReportModel } from '#analysis/report/report-model.ts';

export function xmpPacket({ properties, madeAt }: Pick<ReportModel, 'properties' | 'madeAt'>): string {
  const { title, subject, author, language, producer } = properties;
  const inDefaultLanguage = (words: string) =>
    `<rdf:Alt><rdf:li xml:lang="x-default">${escaped(words)}</rdf:li></rdf:Alt>`;
  return `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title>${inDefaultLanguage(title)}</dc:title>
<dc:description>${inDefaultLanguage(subject)}</dc:description>
<dc:creator><rdf:Seq><rdf:li>${escaped(author)}</rdf:li></rdf:Seq></dc:creator>
<dc:language><rdf:Bag><rdf:li>${escaped(language)}</rdf:li></rdf:Bag></dc:language>
<xmp:CreateDate>${escaped(madeAt)}</xmp:CreateDate>
<xmp:ModifyDate>${escaped(madeAt)}</xmp:ModifyDate>
<xmp:CreatorTool>${escaped(producer)}</xmp:CreatorTool>
<pdf:Producer>${escaped(producer)}</pdf:Producer>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>`;
}

/** Control characters are not allowed in XML 1.0 at all; they become spaces. */
function escaped(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, ' ')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');
}
