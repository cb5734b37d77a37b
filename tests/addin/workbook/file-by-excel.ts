/**
 * A workbook as Excel itself spells one, written by hand from the format's description (Office Open XML, ECMA-376 part 1,
 * and [MS-XLSX] for what came later): shared texts, shared and dynamic formulas, a filter, conditional formats, a name, a
 * message for a cell, and an add-in's settings. No part of it was written by our own writer.
 */
import { zipped } from "./zipped.ts";

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml";

const sheet = `${XML}<worksheet xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheetPr filterMode="1"/><dimension ref="A1:E5"/>
<sheetViews><sheetView tabSelected="1" workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>
<sheetFormatPr defaultRowHeight="15"/><cols><col min="1" max="1" width="20.7109375" customWidth="1"/></cols>
<sheetData>
<row r="1"><c r="A1" s="1" t="s"><v>0</v></c><c r="B1" s="1" t="s"><v>1</v></c><c r="C1" t="s"><v>2</v></c><c r="D1" t="s"><v>3</v></c><c r="E1" t="s"><v>7</v></c></row>
<row r="2"><c r="A2" t="s"><v>4</v></c><c r="B2"><v>520</v></c><c r="C2"><f t="shared" ref="C2:C4" si="0">B2*Rate</f><v>52</v></c><c r="D2" cm="1"><f t="array" ref="D2:D3">_xlfn._xlws.SORT(_xlfn.UNIQUE(A2:A4))</f><v>Alder</v></c><c r="E2" s="2"><v>46146</v></c></row>
<row r="3" hidden="1"><c r="A3" t="s"><v>5</v></c><c r="B3"><v>1180</v></c><c r="C3"><f t="shared" si="0"/><v>118</v></c><c r="D3" t="str"><v>Birch</v></c></row>
<row r="4"><c r="A4" t="s"><v>4</v></c><c r="B4"><v>40</v></c><c r="C4"><f t="shared" si="0"/><v>4</v></c></row>
<row r="5"><c r="A5" t="s"><v>6</v></c><c r="B5" cm="1"><f t="array" ref="B5">_xlfn.LET(_xlpm.a,B2,_xlpm.a+_xldudf_SOAK_DRAWDOWN(6,0.5))</f><v>532</v></c><c r="C5" t="b"><v>1</v></c><c r="D5" t="e"><v>#N/A</v></c></row>
</sheetData>
<autoFilter ref="A1:C4"><filterColumn colId="0"><filters><filter val="Alder"/></filters></filterColumn></autoFilter>
<conditionalFormatting sqref="B2:B4"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>500</formula></cfRule></conditionalFormatting>
<dataValidations count="2"><dataValidation type="list" allowBlank="1" showInputMessage="1" showErrorMessage="1" sqref="A2:A4"><formula1>"Alder,Birch"</formula1></dataValidation><dataValidation allowBlank="1" showInputMessage="1" promptTitle="Area" prompt="As seen from above." sqref="B1"/></dataValidations>
<hyperlinks><hyperlink ref="A5" r:id="rId1"/></hyperlinks>
<pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/><pageSetup orientation="landscape"/>
</worksheet>`;

const texts = [
  "<si><t>Yard</t></si>",
  "<si><t>Area</t></si>",
  "<si><t>Tenth</t></si>",
  "<si><t>Sorted</t></si>",
  "<si><t>Alder</t></si>",
  "<si><t>Birch</t></si>",
  '<si><r><t xml:space="preserve">two </t></r><r><rPr><b/><sz val="11"/><rFont val="Calibri"/></rPr><t>parts</t></r></si>',
  "<si><t>=1+1</t></si>",
];

export const partsByExcel: Readonly<Record<string, string>> = {
  "[Content_Types].xml": `${XML}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPES}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${TYPES}.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="${TYPES}.styles+xml"/><Override PartName="/xl/sharedStrings.xml" ContentType="${TYPES}.sharedStrings+xml"/><Override PartName="/xl/metadata.xml" ContentType="${TYPES}.sheetMetadata+xml"/></Types>`,
  "_rels/.rels": `${XML}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
  "xl/workbook.xml": `${XML}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets><sheet name="Our yards" sheetId="1" r:id="rId1"/></sheets><definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">'Our yards'!$A$1:$C$4</definedName><definedName name="Areas">'Our yards'!$B$2:$B$4</definedName><definedName name="Rate">0.1</definedName></definedNames><calcPr calcId="191029"/></workbook>`,
  "xl/_rels/workbook.xml.rels": `${XML}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${RELATIONS}/styles" Target="styles.xml"/><Relationship Id="rId3" Type="${RELATIONS}/sharedStrings" Target="sharedStrings.xml"/><Relationship Id="rId4" Type="${RELATIONS}/sheetMetadata" Target="metadata.xml"/></Relationships>`,
  "xl/worksheets/sheet1.xml": sheet,
  "xl/worksheets/_rels/sheet1.xml.rels": `${XML}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${RELATIONS}/hyperlink" Target="https://gardens.example/" TargetMode="External"/></Relationships>`,
  "xl/sharedStrings.xml": `${XML}<sst xmlns="${MAIN}" count="9" uniqueCount="8">${texts.join("")}</sst>`,
  "xl/styles.xml": `${XML}<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/></numFmts><fonts count="2"><font><sz val="11"/><color theme="1"/><name val="Calibri"/><family val="2"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFDDEBF7"/><bgColor indexed="64"/></patternFill></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="3"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="0" fontId="1" fillId="2" borderId="0" xfId="0" applyFont="1" applyFill="1"/><xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles><dxfs count="1"><dxf><font><color rgb="FF9C0006"/></font><fill><patternFill><bgColor rgb="FFFFC7CE"/></patternFill></fill></dxf></dxfs></styleSheet>`,
  "xl/metadata.xml": `${XML}<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`,
  "xl/webextensions/webextension1.xml": `${XML}<we:webextension xmlns:we="http://schemas.microsoft.com/office/webextensions/webextension/2010/11" id="{00000000-0000-0000-0000-000000000001}"><we:reference id="00000000-0000-0000-0000-000000000002" version="1.0.0.0" store="developer" storeType="Registry"/><we:alternateReferences/><we:properties><we:property name="soakbook.rows" value="&quot;Sites\\t400&quot;"/><we:property name="Office.AutoShowTaskpaneWithDocument" value="true"/></we:properties><we:bindings/></we:webextension>`,
};

export function fileByExcel(): Uint8Array {
  return zipped(partsByExcel);
}
