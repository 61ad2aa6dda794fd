// Writes the golden workbooks of exceljs into a folder.
import fs from 'node:fs';
import path from 'node:path';
import ExcelJS from 'exceljs';

const here = path.dirname(process.argv[1]);
const data = JSON.parse(fs.readFileSync(path.join(here, 'log.json')));
const out = process.argv[2];
fs.mkdirSync(out, { recursive: true });

const pixel =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

const books = {
  plain() {},
  note(wb, log) { log.getCell('B5').note = 'mine'; },
  'notes-beside'(wb, log) { for (const a1 of ['E5', 'E6', 'A1']) log.getCell(a1).note = { texts: [{ text: 'mine' }] }; },
  picture(wb, log) { log.addImage(wb.addImage({ base64: pixel, extension: 'png' }), 'F2:G4'); },
  'background'(wb, log) { log.addBackgroundImage(wb.addImage({ base64: pixel, extension: 'png' })); },
  validation(wb, log) { log.getCell('B5').dataValidation = { type: 'decimal', operator: 'between', formulae: [0.9, 1.3] }; },
  'conditional-format'(wb, log) { log.addConditionalFormatting({ ref: 'B5:B7', rules: [{ type: 'cellIs', operator: 'greaterThan', formulae: [1.05], priority: 1, style: { font: { bold: true } } }] }); },
  'data-bar'(wb, log) { log.addConditionalFormatting({ ref: 'B5:B7', rules: [{ type: 'dataBar', priority: 1, cfvo: [{ type: 'min' }, { type: 'max' }] }] }); },
  table(wb, log, other) { other.addTable({ name: 'Jars2', ref: 'D1', headerRow: true, columns: [{ name: 'Cask' }, { name: 'Litres' }], rows: [['A', 225], ['B', 50]] }); },
  names(wb, log, other) { other.getCell('B2').name = 'Jars'; },
  'rich-text'(wb, log) { log.getCell('A1').value = { richText: [{ text: 'Heather ' }, { font: { bold: true }, text: 'honey' }] }; },
  'number-format'(wb, log) { for (const r of [5, 6, 7]) log.getCell(r, 2).numFmt = '0.000'; },
  styles(wb, log) { for (const r of [5, 6, 7]) { const c = log.getCell(r, 3); c.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFFFF2CC' } }; c.font = { italic: true, name: 'Arial', size: 11 }; } },
  merged(wb, log) { log.mergeCells('A1:C1'); },
  frozen(wb, log) { log.views = [{ state: 'frozen', xSplit: 1, ySplit: 4 }]; },
  filter(wb, log) { log.autoFilter = 'A4:C7'; },
  'hidden-column'(wb, log) { log.getColumn(5).hidden = true; },
  outline(wb, log) { log.getRow(5).outlineLevel = 1; log.getRow(6).outlineLevel = 1; },
  formulas(wb, log, other) { other.getCell('D1').value = { formula: 'SUM(B2:B3)', result: 42 }; },
  'shared-formulas'(wb, log, other) { other.getCell('D2').value = { formula: 'B2*2', result: 24, shareType: 'shared', ref: 'D2:D3' }; other.getCell('D3').value = { sharedFormula: 'D2', result: 60 }; },
  'array-formula'(wb, log, other) { other.getCell('D2').value = { formula: 'B2:B3*2', result: 24, shareType: 'array', ref: 'D2:D3' }; },
  hyperlink(wb, log) { log.getCell('H1').value = { text: 'a', hyperlink: 'https://example.invalid/a?b=c&d=e' }; log.getCell('H2').value = { text: 'm', hyperlink: 'mailto:a@example.invalid' }; },
  'print-setup'(wb, log) { log.pageSetup = { orientation: 'landscape', printArea: 'A1:C7', printTitlesRow: '4:4' }; log.headerFooter.oddHeader = '&CLog'; },
  'hidden-sheet'(wb, log, other) { other.state = 'veryHidden'; },
  dates(wb, log) { for (const r of [5, 6, 7]) log.getCell(r, 1).value = new Date(Date.UTC(2026, 0, r)); },
  umlauts(wb, log) { log.getCell('H1').value = 'Fäßchen 🍯'; wb.addWorksheet('Notizen äöü'); },
  'tab-colour'(wb, log) { log.properties.tabColor = { argb: 'FF1072BA' }; },
  'booleans-and-errors'(wb, log, other) { other.getCell('D1').value = true; other.getCell('D2').value = { error: '#N/A' }; },
};

for (const [name, make] of Object.entries(books)) {
  const wb = new ExcelJS.Workbook();
  wb.created = wb.modified = new Date(Date.UTC(2026, 0, 1));
  const log = wb.addWorksheet('HH-22');
  const other = wb.addWorksheet('Other');
  data.rows.forEach((row) => log.addRow(row));
  data.other.forEach((row) => other.addRow(row));
  make(wb, log, other);
  await wb.xlsx.writeFile(path.join(out, `${name}.xlsx`));
}
for (const shared of [true, false]) {
  const file = path.join(out, `streamed-${shared ? 'shared' : 'inline'}-texts.xlsx`);
  const wb = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: file, useSharedStrings: shared, useStyles: true });
  for (const [name, rows] of [['HH-22', data.rows], ['Other', data.other]]) {
    const sheet = wb.addWorksheet(name);
    rows.forEach((row) => sheet.addRow(row).commit());
    sheet.commit();
  }
  await wb.commit();
}
