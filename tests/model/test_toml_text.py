"""The layout of TOML: whatever can stand in a file comes back equal, and short lists stay short."""

import tomllib

from hypothesis import example, given
from hypothesis import strategies as st

from model.toml_text import WIDTH, toml_text

KEYS = st.text(max_size=6) | st.sampled_from(["a", "b", "c"])
TEXTS = st.text(max_size=30) | st.sampled_from(["a\nb", '"""\n"', "\r\n\\", "x\\\ny"])
SCALARS = (
    TEXTS
    | st.integers(-(10**20), 10**20)
    | st.floats(allow_nan=False)
    | st.booleans()
    | st.dates()
    | st.datetimes()
    | st.times()
)
VALUES = st.recursive(
    SCALARS,
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(KEYS, inner, max_size=4)
        | st.lists(st.dictionaries(KEYS, inner, max_size=3), max_size=4)
    ),
    max_leaves=20,
)


@given(st.dictionaries(KEYS, VALUES, max_size=5))
@example({"text": "a carriage\r\nreturn"})
@example({"a": {}, "b": {"c": {}}, "d": [{}, {"e": [{}]}]})
def test_any_table_comes_back_equal(table):
    assert tomllib.loads(toml_text(table)) == table


def test_a_list_of_small_tables_takes_one_line_each():
    bars = [{"id": f"b{number}", "at": number} for number in range(3)]
    lines = toml_text({"bars": bars}).splitlines()
    assert lines == ["bars = [", *(f'    {{ id = "b{n}", at = {n} }},' for n in range(3)), "]"]


def test_a_table_too_wide_for_a_line_gets_a_header_of_its_own():
    wide = {"id": "b1", "notes": "x" * WIDTH}
    assert toml_text({"bars": [{"id": "b0"}, wide]}).count("[[bars]]") == 2


def test_text_of_several_lines_is_written_over_several_lines():
    assert toml_text({"notes": "one\ntwo"}).splitlines() == ['notes = """', "one", 'two"""']


def test_a_plain_value_never_slips_under_the_header_of_a_table_before_it():
    table = {"inner": {"x": 1}, "after": 2}
    assert tomllib.loads(toml_text(table)) == table
