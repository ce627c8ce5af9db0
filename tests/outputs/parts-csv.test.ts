import { describe, expect, test } from 'vitest';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { csvText } from '../../src/outputs/parts-csv.js';
import { sampleInputs } from './sample-kit.js';

describe('csvText', () => {
  // RFC 4180, section 2: CRLF ends each record (1), fields with quotes, commas or breaks are quoted (6), quotes doubled (7).
  test.for([
    { row: 'plain', cells: ['aaa', 'bbb'], want: 'aaa,bbb\r\n' },
    { row: 'comma', cells: ['a,b'], want: '"a,b"\r\n' },
    { row: 'quote, rule 7’s own example', cells: ['aaa', 'b"bb', 'ccc'], want: 'aaa,"b""bb",ccc\r\n' },
    { row: 'line break', cells: ['b\r\nbb'], want: '"b\r\nbb"\r\n' },
    { row: 'nothing', cells: [null, 'x', ''], want: ',x,\r\n' },
    { row: 'numbers are numbers', cells: [-1.5, 20], want: '-1.5,20\r\n' },
  ])('RFC 4180: $row', ({ cells, want }) => expect(csvText([cells])).toBe(want));

  // OWASP's page on CSV injection names these six first characters.
  test.for(['=1+1', '+1', '-1', '@sum', '\tx', '\rx'])('a cell that begins like a formula is text: %j', (cell) => {
    const text = csvText([[cell]]);
    expect(text.replace(/^"/, '').startsWith("'")).toBe(true);
    expect(text).toContain(cell);
  });
});

test('parts.csv lists printed parts first, with numbers and mass, and what to order', async () => {
  const { files } = makeOutputs(await sampleInputs([]));
  const text = new TextDecoder().decode(files.find((f) => f.path === 'parts.csv')!.bytes);
  // by hand: .75 g a block, two of them; 28 mm³ of steel at 7.85 g/cm³ is .2198 g
  expect(text.split('\r\n')).toEqual([
    'kind,id,title,quantity,material,mass_g,mass_all_g,plastic_all_g,spares,x_mm,y_mm,z_mm,standard,size,length_mm,file',
    'printed,block,"Block, drawn for a test",2,invented,0.75,1.5,1.5,,10,20,3,,,,stl/block.stl',
    'bought,pin-2x7,Pin,1,steel,0.22,0.22,,,2,2,7,ISO 2338,2 m6,7,',
    '',
  ]);
});
