"""The archive: records and their photos for each part number, found again and proved whole.

`open_archive` gives an `Archive`; every function here takes one first. Database and photo store
are named by URL: SQLite and a local folder by default, any database and store that SQLAlchemy
and fsspec reach. Nothing here loads Qt; import it where it is first used, for SQLAlchemy is
heavy.
"""

from ptmark.archive.adding import Added, add_record
from ptmark.archive.chain import lines
from ptmark.archive.copying import back_up
from ptmark.archive.density import density_picture, laid_out, shaded
from ptmark.archive.exchange import Exported, export
from ptmark.archive.finding import (
    Hit,
    Page,
    count,
    count_some,
    drop_search,
    find,
    find_all,
    found_csv,
    indications_of,
    photos_of,
    record_bytes,
    record_of,
    save_search,
    saved_search,
    saved_searches,
)
from ptmark.archive.findings import Problem, Verified
from ptmark.archive.history import Period, part_history, serial_history
from ptmark.archive.keeping import apply_rules, due, hold, keep_for, keeping, release
from ptmark.archive.mending import repair
from ptmark.archive.opening import Archive, open_archive
from ptmark.archive.placing import (
    PlaceMap,
    Seen,
    datums,
    place_map,
    place_record,
    placements,
    seen_by_cell,
)
from ptmark.archive.query import Query, query_from_json, query_to_json
from ptmark.archive.rebuilding import rebuild
from ptmark.archive.roles import give_role, logins, may_hold, set_roles, take_role
from ptmark.archive.store import key_for, open_store
from ptmark.archive.taking_in import take_bundles
from ptmark.archive.verifying import verify

__all__ = [
    "Added",
    "Archive",
    "Exported",
    "Hit",
    "Page",
    "Period",
    "PlaceMap",
    "Problem",
    "Query",
    "Seen",
    "Verified",
    "add_record",
    "apply_rules",
    "back_up",
    "count",
    "count_some",
    "datums",
    "density_picture",
    "drop_search",
    "due",
    "export",
    "find",
    "find_all",
    "found_csv",
    "give_role",
    "hold",
    "indications_of",
    "keep_for",
    "keeping",
    "key_for",
    "laid_out",
    "lines",
    "logins",
    "may_hold",
    "open_archive",
    "open_store",
    "part_history",
    "photos_of",
    "place_map",
    "place_record",
    "placements",
    "query_from_json",
    "query_to_json",
    "rebuild",
    "record_bytes",
    "record_of",
    "release",
    "repair",
    "save_search",
    "saved_search",
    "saved_searches",
    "seen_by_cell",
    "serial_history",
    "set_roles",
    "shaded",
    "take_bundles",
    "take_role",
    "verify",
]
