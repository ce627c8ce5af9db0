/** A 3MF package: a zip with the model, its thumbnail and how they belong together (Open Packaging Conventions). */
import { strToU8, zipSync } from 'fflate';

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

export const threeMf = ({ model, thumbnail }: { readonly model: string; readonly thumbnail: Uint8Array }): Uint8Array =>
  zipSync(
    {
      '[Content_Types].xml': strToU8(TYPES),
      '_rels/.rels': strToU8(RELATIONS),
      '3D/3dmodel.model': strToU8(model),
      'Metadata/thumbnail.png': [thumbnail, { level: 0 }],
    },
    { level: 4, mtime: NO_TIME },
  );
