"""Rules that PostgreSQL itself keeps, whoever writes and with whatever program.

The audit log only grows, each line chained and in the name of the login that wrote it; a record
changes only together with its line in the log, as do rules, holds, searches and places, and a
line tells only what was done; no revision goes back; what is signed is revised by a reviewer's
login only; what a keeper does, only a keeper's login can put into the log. Functions and
triggers are set anew with each migration and with the roles. An owner of the tables can take
them off: verifying finds what was changed then, by the log's lines beside the photos.
"""

from sqlalchemy import Connection, text

__all__ = ["guard"]

_CHILDREN = ("document", "wording", "revision", "inspection_photo", "indication")
_NAMED = ("saved_search", "rule", "hold", "placement")
_OF_KEEPERS = (
    *("deleted", "repaired", "set rule", "set hold", "dropped rule", "dropped hold"),
    *("set roles", "gave role", "took role"),
)

# A line's text is the JSON that `chain.link` hashes: PostgreSQL escapes strings as Python does.
_FUNCTIONS = """
CREATE OR REPLACE FUNCTION ptmark_is(asked text) RETURNS boolean LANGUAGE sql STABLE
SET search_path = {schema}, pg_temp AS $$
  SELECT CASE WHEN to_regrole(asked) IS NULL THEN true
    ELSE pg_has_role(session_user, asked, 'member') OR pg_has_role(session_user,
      (SELECT relowner FROM pg_class WHERE oid = '{schema}.audit'::regclass), 'member') END $$;

CREATE OR REPLACE FUNCTION ptmark_audit_line() RETURNS trigger LANGUAGE plpgsql
SET search_path = {schema}, pg_temp AS $$
DECLARE
  last record;
  login text := session_user;
BEGIN
  PERFORM pg_advisory_xact_lock({lock});
  SELECT seq, sha256 INTO last FROM audit ORDER BY seq DESC LIMIT 1;
  IF NEW.seq <> coalesce(last.seq, 0) + 1
    OR NEW.previous <> coalesce(last.sha256, repeat('0', 64))
    OR NEW.sha256 <> encode(sha256(convert_to('[' || NEW.seq || ',' || to_json(NEW.at)
      || ',' || to_json(NEW.who) || ',' || to_json(NEW.action) || ',' || to_json(NEW.subject)
      || ',' || to_json(NEW.detail) || ',' || to_json(NEW.previous) || ']', 'UTF8')), 'hex')
  THEN RAISE EXCEPTION 'line % does not fit the audit log', NEW.seq;
  END IF;
  IF NEW.who <> login AND right(NEW.who, length(login) + 3) <> ' (' || login || ')' THEN
    RAISE EXCEPTION 'the log is written in the name of %, not of %', login, NEW.who
      USING ERRCODE = '42501';
  END IF;
  IF NEW.action IN ({keepers}) AND NOT ptmark_is('ptmark_keeper') THEN
    RAISE EXCEPTION '"%" is the role of a keeper only', NEW.action USING ERRCODE = '42501';
  END IF;
  RETURN NEW;
END $$;

CREATE OR REPLACE FUNCTION ptmark_told() RETURNS trigger LANGUAGE plpgsql
SET search_path = {schema}, pg_temp AS $$
BEGIN
  PERFORM 1 FROM inspection
    WHERE record_id = NEW.subject
      AND (NEW.action = 'deleted' OR sha256 = NEW.detail::json ->> 'sha256');
  IF FOUND <> (NEW.action <> 'deleted') THEN
    RAISE EXCEPTION 'line % tells of % what was not done', NEW.seq, NEW.subject;
  END IF;
  RETURN NULL;
END $$;

CREATE OR REPLACE FUNCTION ptmark_audit_kept() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'the audit log only grows' USING ERRCODE = '42501';
END $$;

CREATE OR REPLACE FUNCTION ptmark_revision() RETURNS trigger LANGUAGE plpgsql
SET search_path = {schema}, pg_temp AS $$
BEGIN
  IF NEW.id <> OLD.id OR NEW.record_id <> OLD.record_id THEN
    RAISE EXCEPTION 'a record keeps its id';
  END IF;
  IF NEW.revision < OLD.revision AND NOT ptmark_is('ptmark_keeper') THEN
    RAISE EXCEPTION 'revision % is kept, % is older', OLD.revision, NEW.revision;
  END IF;
  IF OLD.signatures > 0 AND NOT ptmark_is('ptmark_reviewer') THEN
    RAISE EXCEPTION 'a signed record is revised by the role of a reviewer only'
      USING ERRCODE = '42501';
  END IF;
  RETURN NEW;
END $$;

CREATE OR REPLACE FUNCTION ptmark_signed() RETURNS trigger LANGUAGE plpgsql
SET search_path = {schema}, pg_temp AS $$
BEGIN
  -- New rows come with an inspection of their own transaction, which its own rule let through.
  PERFORM 1 FROM inspection WHERE signatures > 0
    AND (id = OLD.inspection_id
      OR id = NEW.inspection_id AND xmin <> pg_current_xact_id()::xid);
  IF FOUND AND NOT ptmark_is('ptmark_reviewer') THEN
    RAISE EXCEPTION 'a signed record is revised by the role of a reviewer only'
      USING ERRCODE = '42501';
  END IF;
  RETURN coalesce(NEW, OLD);
END $$;

CREATE OR REPLACE FUNCTION ptmark_logged() RETURNS trigger LANGUAGE plpgsql
SET search_path = {schema}, pg_temp AS $$
DECLARE
  here xid := pg_current_xact_id()::xid;
  own record;
  subject_id text;
BEGIN
  IF TG_TABLE_NAME = 'inspection' THEN
    subject_id := coalesce(NEW.record_id, OLD.record_id);
    SELECT sha256 INTO own FROM inspection WHERE record_id = subject_id;
    PERFORM 1 FROM audit WHERE subject = subject_id AND xmin = here
      AND CASE WHEN own.sha256 IS NULL THEN action = 'deleted'
        ELSE action IN ('added', 'revised', 'repaired')
          AND detail::json ->> 'sha256' = own.sha256 END;
  ELSE
    SELECT record_id INTO own FROM inspection
      WHERE id = coalesce(NEW.inspection_id, OLD.inspection_id);
    IF NOT FOUND THEN RETURN NULL; END IF;  -- deleted, which its own row answers for
    subject_id := own.record_id;
    PERFORM 1 FROM audit WHERE subject = subject_id AND xmin = here;
  END IF;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'record % changes only with a line in the audit log', subject_id;
  END IF;
  RETURN NULL;
END $$;

CREATE OR REPLACE FUNCTION ptmark_named() RETURNS trigger LANGUAGE plpgsql
SET search_path = {schema}, pg_temp AS $$
DECLARE
  own jsonb := to_jsonb(coalesce(NEW, OLD));
  key text := coalesce(own ->> 'name', own ->> 'record_id');
BEGIN
  PERFORM 1 FROM audit WHERE xmin = pg_current_xact_id()::xid
    AND (subject = key AND action IN ('set ' || TG_TABLE_NAME, 'dropped ' || TG_TABLE_NAME)
      OR subject = TG_TABLE_NAME AND action = 'repaired');
  IF NOT FOUND THEN
    RAISE EXCEPTION '% "%" changes only with a line in the audit log', TG_TABLE_NAME, key;
  END IF;
  RETURN NULL;
END $$;
"""


def guard(conn: Connection, lock: int) -> None:
    """Set the rules, in the caller's transaction; nothing is done but on PostgreSQL.

    Parameters
    ----------
    conn : Connection
    lock : int
        Number of the lock by which writers take the log's end in turn.
    """
    if conn.dialect.name != "postgresql":
        return
    schema = conn.dialect.identifier_preparer.quote(
        str(conn.execute(text("SELECT current_schema()")).scalar_one())
    )
    keepers = ", ".join(f"'{one}'" for one in _OF_KEEPERS)
    made = _FUNCTIONS.format(schema=schema, lock=lock, keepers=keepers)
    for one in made.split("\n\n"):
        conn.exec_driver_sql(one, execution_options={"no_parameters": True})
    ever = "BEFORE UPDATE OR DELETE OR TRUNCATE"
    _trigger(conn, "audit", "line", "BEFORE INSERT", "ROW", "audit_line")
    _trigger(conn, "audit", "kept", ever, "STATEMENT", "audit_kept")
    _trigger(conn, "inspection", "revision", "BEFORE UPDATE", "ROW", "revision")
    for name in _CHILDREN:
        _trigger(conn, name, "signed", "BEFORE INSERT OR UPDATE OR DELETE", "ROW", "signed")
    for name in ("inspection", *_CHILDREN):
        _at_commit(conn, name, "logged", "INSERT OR UPDATE OR DELETE")
    for name in _NAMED:
        _at_commit(conn, name, "named", "INSERT OR UPDATE OR DELETE")
    told = "WHEN (NEW.action IN ('added', 'revised', 'deleted'))"
    _at_commit(conn, "audit", "told", "INSERT", told)


def _at_commit(conn: Connection, on: str, name: str, after: str, when: str = "") -> None:
    conn.exec_driver_sql(f"DROP TRIGGER IF EXISTS ptmark_{name} ON {on}")
    conn.exec_driver_sql(
        f"CREATE CONSTRAINT TRIGGER ptmark_{name} AFTER {after} ON {on}"
        f" DEFERRABLE INITIALLY DEFERRED FOR EACH ROW {when}"
        f" EXECUTE FUNCTION ptmark_{name}()"
    )


def _trigger(conn: Connection, on: str, name: str, when: str, each: str, function: str) -> None:
    conn.exec_driver_sql(f"DROP TRIGGER IF EXISTS ptmark_{name} ON {on}")
    conn.exec_driver_sql(
        f"CREATE TRIGGER ptmark_{name} {when} ON {on} FOR EACH {each} "
        f"EXECUTE FUNCTION ptmark_{function}()"
    )
