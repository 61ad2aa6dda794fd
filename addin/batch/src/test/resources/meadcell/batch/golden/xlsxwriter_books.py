"""Writes the golden workbooks of XlsxWriter into a folder."""
import json, os, sys
import xlsxwriter

HERE = os.path.dirname(os.path.abspath(__file__))
LOG = json.load(open(os.path.join(HERE, "log.json")))
OUT = sys.argv[1]
books = {}


def book(make):
    books[make.__name__.replace("_", "-")] = make
    return make


def chart(wb, log, kind, at="F2"):
    c = wb.add_chart({"type": kind})
    c.add_series({"values": "='HH-22'!$B$5:$B$7", "categories": "='HH-22'!$A$5:$A$7"})
    log.insert_chart(at, c)


@book
def plain(wb, log, other): pass
@book
def line_chart(wb, log, other): chart(wb, log, "line")
@book
def column_charts(wb, log, other): chart(wb, log, "column"); chart(wb, log, "bar", "F20")
@book
def chart_and_comment(wb, log, other): chart(wb, log, "scatter"); log.write_comment("B5", "mine", {"author": "a person"})
@book
def chart_sheet(wb, log, other):
    sheet = wb.add_chartsheet("Chart"); c = wb.add_chart({"type": "line"})
    c.add_series({"values": "='HH-22'!$B$5:$B$7"}); sheet.set_chart(c)
@book
def comments(wb, log, other):
    for a1 in ("A1", "E5", "E6"): log.write_comment(a1, "mine", {"author": "a person", "visible": a1 == "A1"})
@book
def text_box(wb, log, other): log.insert_textbox("F2", "stir the lees")
@book
def button(wb, log, other): log.insert_button("F2", {"caption": "press"})
@book
def button_and_comment(wb, log, other): log.insert_button("F2", {"caption": "press"}); log.write_comment("E6", "mine")
@book
def validation(wb, log, other): log.data_validation("B5:B20", {"validate": "decimal", "criteria": "between", "minimum": 0.9, "maximum": 1.3})
@book
def list_validation(wb, log, other): log.data_validation("H5:H20", {"validate": "list", "source": ["clear", "cloudy"]})
@book
def conditional_formats(wb, log, other):
    log.conditional_format("B5:B7", {"type": "cell", "criteria": ">", "value": 1.05, "format": wb.add_format({"bold": True})})
@book
def data_bars_2010(wb, log, other): log.conditional_format("B5:B7", {"type": "data_bar", "data_bar_2010": True})
@book
def icons_2010(wb, log, other): log.conditional_format("B5:B7", {"type": "icon_set", "icon_style": "3_traffic_lights"})
@book
def sparklines(wb, log, other): log.add_sparkline("H5", {"range": "'HH-22'!B5:B7"})
@book
def table(wb, log, other): other.add_table("A1:B3", {"columns": [{"header": "Lot"}, {"header": "Jars"}], "name": "Jars"})
@book
def table_with_totals(wb, log, other):
    other.add_table("A1:B4", {"total_row": True, "columns": [{"header": "Lot"}, {"header": "Jars", "total_function": "sum"}]})
@book
def names(wb, log, other): wb.define_name("Jars", "=Other!$B$2:$B$3"); wb.define_name("Other!Local", "=Other!$B$2")
@book
def rich_text(wb, log, other): log.write_rich_string("A1", "Heather ", wb.add_format({"bold": True}), "honey")
@book
def number_formats(wb, log, other):
    f = wb.add_format({"num_format": "0.000 \"SG\""})
    for row, sg in ((4, 1.08), (5, 1.06), (6, 1.02)): log.write_number(row, 1, sg, f)
@book
def styled_readings(wb, log, other):
    f = wb.add_format({"bg_color": "#FFF2CC", "border": 1, "italic": True})
    for row, t in ((4, 18), (5, 17), (6, 16)): log.write_number(row, 2, t, f)
@book
def column_format(wb, log, other): log.set_column("A:XFD", 11, wb.add_format({"font_name": "Arial"}))
@book
def row_format(wb, log, other): log.set_row(3, 30, wb.add_format({"bold": True}))
@book
def merged(wb, log, other): log.merge_range("A1:C1", "Heather honey", wb.add_format({"align": "center"}))
@book
def frozen(wb, log, other): log.freeze_panes(4, 1)
@book
def auto_filter(wb, log, other): log.autofilter("A4:C7")
@book
def outline(wb, log, other): log.set_row(4, None, None, {"level": 1}); log.set_row(5, None, None, {"level": 1, "hidden": True})
@book
def protected_other(wb, log, other): other.protect("x")
@book
def formulas_with_values(wb, log, other): other.write_formula("D1", "=SUM(B2:B3)", None, 42)
@book
def array_formula(wb, log, other): other.write_array_formula("D1:D2", "{=B2:B3*2}", None, 24)
@book
def dynamic_array(wb, log, other): other.write_dynamic_array_formula("D1:D2", "=_xlfn._xlws.SORT(B2:B3)", None, 12)
@book
def future_function(wb, log, other): other.write_formula("D1", "=_xlfn.STDEV.S(B2:B3)", None, 12.7)
@book
def hyperlinks(wb, log, other):
    log.write_url("H1", "https://example.invalid/a?b=c&d=e"); log.write_url("H2", "external:C:\\logs\\Fass 3.xlsx"); log.write_url("H3", "internal:Other!A1")
@book
def header_and_footer(wb, log, other): log.set_header("&CLog"); log.set_footer("&P"); log.set_landscape(); log.repeat_rows(3)
@book
def picture_in_background(wb, log, other): log.set_tab_color("#1072BA"); log.hide_gridlines(2)
@book
def in_memory_strings(wb, log, other): log.write_string("H1", "Fäßchen 🍯 ")
@book
def custom_properties(wb, log, other): wb.set_custom_property("Cellar", "Tarn Hollow"); wb.set_custom_property("Casks", 12)
@book
def hidden_sheet(wb, log, other): other.hide()
@book
def selection_and_zoom(wb, log, other): log.set_zoom(80); log.set_selection("B5:B7")
@book
def ignored_errors(wb, log, other): log.ignore_errors({"number_stored_as_text": "A1:XFD1048576"})
@book
def error_bars(wb, log, other):
    c = wb.add_chart({"type": "line"}); c.add_series({"values": "='HH-22'!$B$5:$B$7", "y_error_bars": {"type": "standard_error"}, "trendline": {"type": "linear"}})
    log.insert_chart("F2", c)


os.makedirs(OUT, exist_ok=True)
for name, make in books.items():
    wb = xlsxwriter.Workbook(os.path.join(OUT, name + ".xlsx"), {"in_memory": True})
    log = wb.add_worksheet("HH-22"); other = wb.add_worksheet("Other")
    for sheet, rows in ((log, LOG["rows"]), (other, LOG["other"])):
        for r, row in enumerate(rows):
            for c, value in enumerate(row): sheet.write(r, c, value)
    make(wb, log, other)
    wb.close()
