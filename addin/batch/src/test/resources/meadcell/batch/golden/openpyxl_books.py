"""Writes the golden workbooks of openpyxl into a folder."""
import json, os, sys
from datetime import date
from openpyxl import Workbook
from openpyxl.chart import BarChart, LineChart, PieChart, Reference, ScatterChart, Series
from openpyxl.comments import Comment
from openpyxl.formatting.rule import CellIsRule, ColorScaleRule, DataBarRule, FormulaRule, IconSetRule
from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Protection, Side
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.table import Table, TableStyleInfo

HERE = os.path.dirname(os.path.abspath(__file__))
LOG = json.load(open(os.path.join(HERE, "log.json")))
OUT = sys.argv[1]
books = {}


def book(make):
    books[make.__name__.replace("_", "-")] = make
    return make


def chart_on(sheet, chart):
    chart.add_data(Reference(sheet, min_col=2, min_row=4, max_row=7), titles_from_data=True)
    sheet.add_chart(chart, "F2")


@book
def plain(wb, log, other): pass
@book
def line_chart(wb, log, other): chart_on(log, LineChart())
@book
def bar_chart(wb, log, other): chart_on(log, BarChart())
@book
def pie_chart(wb, log, other): chart_on(log, PieChart())
@book
def two_charts(wb, log, other):
    chart_on(log, LineChart())
    second = BarChart()
    second.add_data(Reference(other, min_col=2, min_row=1, max_row=3), titles_from_data=True)
    other.add_chart(second, "D2")
@book
def scatter_chart(wb, log, other):
    chart = ScatterChart()
    chart.series.append(Series(Reference(log, min_col=2, min_row=5, max_row=7), Reference(log, min_col=1, min_row=5, max_row=7)))
    log.add_chart(chart, "F2")
@book
def comment_on_a_reading(wb, log, other): log["B5"].comment = Comment("mine", "a person")
@book
def comments_all_about(wb, log, other):
    for a1 in ("A1", "B5", "E5", "E6", "C7"):
        log[a1].comment = Comment("mine at " + a1, "a person")
@book
def validation(wb, log, other):
    rule = DataValidation(type="decimal", operator="between", formula1="0.9", formula2="1.3")
    rule.add("B5:B20"); log.add_data_validation(rule)
@book
def list_validation(wb, log, other):
    rule = DataValidation(type="list", formula1='"clear,cloudy"', allow_blank=True)
    rule.add("H5:H20"); log.add_data_validation(rule)
@book
def conditional_formats(wb, log, other):
    log.conditional_formatting.add("B5:B7", CellIsRule(operator="greaterThan", formula=["1.05"], font=Font(bold=True)))
    log.conditional_formatting.add("C5:C7", FormulaRule(formula=["C5>17"], fill=PatternFill("solid", bgColor="FFFFC7CE")))
@book
def colour_scale(wb, log, other):
    log.conditional_formatting.add("B5:B7", ColorScaleRule(start_type="min", start_color="FFAA0000", end_type="max", end_color="FF00AA00"))
@book
def data_bars(wb, log, other):
    log.conditional_formatting.add("B5:B7", DataBarRule(start_type="min", end_type="max", color="FF638EC6"))
@book
def icon_sets(wb, log, other):
    log.conditional_formatting.add("B5:B7", IconSetRule("3TrafficLights1", "percent", [0, 33, 67]))
@book
def table(wb, log, other):
    t = Table(displayName="Jars", ref="A1:B3"); t.tableStyleInfo = TableStyleInfo(name="TableStyleMedium9"); other.add_table(t)
@book
def named_range(wb, log, other): wb.defined_names.append(DefinedName("Jars", attr_text="Other!$B$2:$B$3"))
@book
def named_constant(wb, log, other): wb.defined_names.append(DefinedName("Rate", attr_text="0.5"))
@book
def named_styles(wb, log, other):
    red = NamedStyle(name="Cellar red"); red.font = Font(color="FFC00000", bold=True); wb.add_named_style(red)
    for row in (5, 6, 7):
        log.cell(row, 3).style = "Cellar red"
@book
def borders_and_fills(wb, log, other):
    side = Side(style="thin", color="FF000000")
    for row in log["A4:C7"]:
        for cell in row:
            cell.border = Border(left=side, right=side, top=side, bottom=side)
            cell.fill = PatternFill("solid", fgColor="FFFFF2CC")
@book
def dates(wb, log, other):
    for i in range(3):
        log.cell(5 + i, 1).value = date(2026, 1, 1 + i)
@book
def merged_title(wb, log, other): log.merge_cells("A1:C1")
@book
def frozen(wb, log, other): log.freeze_panes = "B5"
@book
def auto_filter(wb, log, other): log.auto_filter.ref = "A4:C7"
@book
def wide_columns(wb, log, other):
    log.column_dimensions["A"].width = 20; log.column_dimensions["C"].width = 12
@book
def hidden_row(wb, log, other): log.row_dimensions[6].hidden = True
@book
def groups(wb, log, other): log.row_dimensions.group(5, 6, hidden=False)
@book
def protected_other(wb, log, other): other.protection.sheet = True; other.protection.password = "x"
@book
def unlocked_cells(wb, log, other):
    for row in (5, 6, 7):
        log.cell(row, 2).protection = Protection(locked=False)
@book
def formulas(wb, log, other): other["D1"] = "=SUM(B2:B3)"; other["D2"] = "='HH-22'!B5*1000"
@book
def array_formula(wb, log, other):
    other["D1"] = "=SUM(B2:B3*2)"; other.formula_attributes["D1"] = {"t": "array", "ref": "D1"}
@book
def hyperlinks(wb, log, other): log["A1"].hyperlink = "https://example.invalid/a?b=c&d=e"; log["A2"].hyperlink = "#Other!A1"
@book
def print_set_up(wb, log, other):
    log.page_setup.orientation = "landscape"; log.print_title_rows = "4:4"; log.print_area = "A1:C7"
    log.oddHeader.center.text = "Log &P"
@book
def third_sheet(wb, log, other): wb.create_sheet("Notizen äöü").append(["Fäßchen", "°Bx"])
@book
def very_hidden_sheet(wb, log, other): other.sheet_state = "veryHidden"
@book
def tab_colour(wb, log, other): log.sheet_properties.tabColor = "FF1072BA"
@book
def other_long_table(wb, log, other):
    for i in range(200):
        other.append(["lot %d" % i, i])

@book
def rotated_headers(wb, log, other):
    for cell in log[4]:
        cell.alignment = Alignment(textRotation=45, wrap_text=True)
@book
def zoom_and_grid(wb, log, other): log.sheet_view.zoomScale = 80; log.sheet_view.showGridLines = False
@book
def page_breaks(wb, log, other):
    from openpyxl.worksheet.pagebreak import Break
    log.row_breaks.append(Break(id=5))
@book
def scenario_text(wb, log, other): log["H1"] = "_x000D_ is text; <&> too"; log["H2"] = "line\nbreak"
@book
def booleans_and_errors(wb, log, other): other["D1"] = True; other["D2"] = "#N/A"
@book
def date_1904(wb, log, other):
    from openpyxl.utils.datetime import CALENDAR_MAC_1904
    wb.epoch = CALENDAR_MAC_1904


os.makedirs(OUT, exist_ok=True)
for name, make in books.items():
    wb = Workbook(); log = wb.active; log.title = "HH-22"; other = wb.create_sheet("Other")
    for row in LOG["rows"]: log.append(row)
    for row in LOG["other"]: other.append(row)
    make(wb, log, other)
    wb.save(os.path.join(OUT, name + ".xlsx"))
