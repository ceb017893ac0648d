"""The archive: records and their photos for each part number, found again and proved whole.

`open_archive` gives an `Archive`; every function here takes one first. Database and photo store
are named by URL: SQLite and a local folder by default, any database and store that SQLAlchemy
and fsspec reach. Nothing here loads Qt; import it where it is first used, for SQLAlchemy is
heavy.
"""

from ptmark.archive.adding import Added, add_record
from ptmark.archive.chain import Line, lines
from ptmark.archive.finding import (
    COLUMNS,
    Hit,
    Page,
    count,
    find,
    find_all,
    found_csv,
    indications_of,
    photos_of,
    record_bytes,
    save_search,
    saved_search,
    saved_searches,
)
from ptmark.archive.opening import Archive, open_archive
from ptmark.archive.query import Query, query_from_json, query_to_json
from ptmark.archive.store import Store, key_for, open_store
from ptmark.archive.verifying import Problem, Verified, verify

__all__ = [
    "COLUMNS",
    "Added",
    "Archive",
    "Hit",
    "Line",
    "Page",
    "Problem",
    "Query",
    "Store",
    "Verified",
    "add_record",
    "count",
    "find",
    "find_all",
    "found_csv",
    "indications_of",
    "key_for",
    "lines",
    "open_archive",
    "open_store",
    "photos_of",
    "query_from_json",
    "query_to_json",
    "record_bytes",
    "save_search",
    "saved_search",
    "saved_searches",
    "verify",
]
