/** A 3MF package: a zip with the model, its thumbnail and how they belong together (Open Packaging Conventions). */
import { strToU8, Zip, type ZipInputFile, ZipPassThrough } from 'fflate';
import { joinBytes } from '../bytes.js';
import type { Compression } from '../context.js';

const TYPES = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
<Default Extension="png" ContentType="image/png"/>
</Types>
`;
const RELATIONS = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
<Relationship Id="model" Target="/3D/3dmodel.model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
<Relationship Id="thumbnail" Target="/Metadata/thumbnail.png" Type="http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail"/>
</Relationships>
`;
/** The earliest that a zip can say: same content, same bytes. */
const NO_TIME = '1980-01-01T00:00:00';
/** Deflate, APPNOTE 4.4.5. */
const DEFLATED = 8;

export interface PackageContent {
  readonly model: Uint8Array;
  readonly thumbnail: Uint8Array;
}

export function threeMf({ model, thumbnail }: PackageContent, { deflateRaw, crc32 }: Compression): Uint8Array {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    chunks.push(chunk);
  });
  const put = (name: string, content: Uint8Array) => {
    const entry: ZipInputFile = {
      filename: name,
      mtime: NO_TIME,
      compression: DEFLATED,
      size: content.length,
      crc: crc32(content),
    };
    zip.add(entry);
    // What is packed already goes in as it is.
    entry.ondata!(null, deflateRaw(content), true);
  };
  put('[Content_Types].xml', strToU8(TYPES));
  put('_rels/.rels', strToU8(RELATIONS));
  put('3D/3dmodel.model', model);
  const stored = new ZipPassThrough('Metadata/thumbnail.png');
  stored.mtime = NO_TIME;
  zip.add(stored);
  stored.push(thumbnail, true);
  zip.end();
  return joinBytes(chunks);
}
