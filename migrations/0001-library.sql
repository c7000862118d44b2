-- The library: cases, their photos, marks, findings and chain, the journal, jobs and what can be searched.
-- Times we make are UTC instants (ISO 8601, milliseconds, Z). Times we are told are wall times: local text,
-- minutes east of UTC or NULL where nobody said, and how precise they are.

CREATE TABLE setting (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  theme TEXT NOT NULL CHECK (theme IN ('light', 'dark', 'system')),
  paper TEXT NOT NULL CHECK (paper IN ('A4', 'Letter')),
  length_unit TEXT NOT NULL CHECK (length_unit IN ('mm', 'inch')),
  current_analyst_id INTEGER REFERENCES analyst (id),
  revision INTEGER NOT NULL CHECK (revision >= 1)
) STRICT;

CREATE TABLE analyst (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
  qualification TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1)
) STRICT;

INSERT INTO setting (id, theme, paper, length_unit, current_analyst_id, revision)
VALUES (1, 'system', 'A4', 'mm', NULL, 1);

-- A machine kind as it was when a case was opened with it: kept whole, so that an old case reads as it was written.
CREATE TABLE pack (
  id INTEGER PRIMARY KEY,
  pack_id TEXT NOT NULL,
  version TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  label TEXT NOT NULL,
  content TEXT NOT NULL CHECK (json_valid(content)),
  UNIQUE (pack_id, version, sha256)
) STRICT;

-- The words behind the ids, so that a search for "thrust bearing" finds what was entered by its id.
CREATE TABLE pack_term (
  id INTEGER PRIMARY KEY,
  pack_row INTEGER NOT NULL REFERENCES pack (id) ON DELETE CASCADE,
  list TEXT NOT NULL CHECK (list IN ('component', 'zone', 'kind', 'position')),
  -- The component of a zone; '' for the other lists.
  owner TEXT NOT NULL,
  term TEXT NOT NULL,
  label TEXT NOT NULL,
  UNIQUE (pack_row, list, owner, term)
) STRICT;

CREATE TABLE teardown_case (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  number TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(number) BETWEEN 1 AND 40),
  status TEXT NOT NULL CHECK (status IN ('open', 'issued', 'superseded', 'withdrawn')),
  status_reason TEXT NOT NULL DEFAULT '',
  pack_row INTEGER NOT NULL REFERENCES pack (id),
  unit_maker TEXT NOT NULL,
  unit_model TEXT NOT NULL,
  unit_serial TEXT NOT NULL,
  unit_part_number TEXT NOT NULL,
  customer TEXT NOT NULL,
  claim TEXT NOT NULL,
  outcome TEXT NOT NULL CHECK (outcome IN ('not-answered', 'claim-supported', 'claim-partly-supported',
    'claim-not-supported', 'undetermined', 'no-fault-found', 'settled-as-goodwill')),
  conclusion TEXT NOT NULL,
  opened_at TEXT NOT NULL CHECK (opened_at GLOB '????-??-??T??:??:??.???Z'),
  opened_by TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  CHECK (status <> 'withdrawn' OR length(status_reason) >= 1)
) STRICT;

-- A picture by its content. It lives while anything names it, whatever cases show it.
CREATE TABLE blob (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  -- Also the original's name in the photo store.
  sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64 AND sha256 NOT GLOB '*[^0-9a-f]*'),
  bytes INTEGER NOT NULL CHECK (bytes > 0),
  media_type TEXT NOT NULL,
  -- Upright size in pixels: EXIF orientation is resolved once, when the picture comes in.
  width INTEGER NOT NULL CHECK (width > 0),
  height INTEGER NOT NULL CHECK (height > 0),
  orientation INTEGER NOT NULL CHECK (orientation BETWEEN 1 AND 8),
  display_width INTEGER NOT NULL CHECK (display_width > 0),
  display_height INTEGER NOT NULL CHECK (display_height > 0),
  taken_local TEXT CHECK (taken_local GLOB '????-??-??T??:??:??'),
  taken_offset_minutes INTEGER,
  taken_precision TEXT CHECK (taken_precision IN ('year', 'month', 'day', 'minute', 'second')),
  camera TEXT NOT NULL,
  gps TEXT CHECK (gps IS NULL OR json_valid(gps)),
  stored_at TEXT NOT NULL CHECK (stored_at GLOB '????-??-??T??:??:??.???Z'),
  CHECK ((taken_local IS NULL) = (taken_precision IS NULL)),
  CHECK (taken_local IS NOT NULL OR taken_offset_minutes IS NULL)
) STRICT;

CREATE TABLE photo (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  case_row INTEGER NOT NULL REFERENCES teardown_case (id),
  blob_row INTEGER NOT NULL REFERENCES blob (id),
  place INTEGER NOT NULL CHECK (place >= 0),
  source_name TEXT NOT NULL,
  caption TEXT NOT NULL,
  stage TEXT CHECK (stage IN ('as-received', 'stripped', 'cleaned', 'sectioned')),
  seen_from TEXT,
  added_at TEXT NOT NULL CHECK (added_at GLOB '????-??-??T??:??:??.???Z'),
  added_by TEXT NOT NULL,
  -- A photo taken out of the case keeps its line in the register and says why.
  removed_at TEXT CHECK (removed_at GLOB '????-??-??T??:??:??.???Z'),
  removed_reason TEXT,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  UNIQUE (case_row, blob_row),
  CHECK ((removed_at IS NULL) = (removed_reason IS NULL))
) STRICT;
CREATE INDEX photo_of_blob ON photo (blob_row);
CREATE INDEX photo_in_order ON photo (case_row, place);

CREATE TABLE photo_part (
  id INTEGER PRIMARY KEY,
  photo_row INTEGER NOT NULL REFERENCES photo (id) ON DELETE CASCADE,
  place INTEGER NOT NULL,
  component TEXT NOT NULL,
  position TEXT,
  UNIQUE (photo_row, place)
) STRICT;

CREATE TABLE finding (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  case_row INTEGER NOT NULL REFERENCES teardown_case (id),
  number INTEGER NOT NULL CHECK (number >= 1),
  component TEXT NOT NULL,
  position TEXT,
  zone TEXT,
  kind TEXT NOT NULL,
  class TEXT NOT NULL CHECK (class IN ('primary', 'secondary', 'unrelated', 'undecided')),
  presence TEXT NOT NULL CHECK (presence IN ('present', 'looked-for-absent', 'not-examined')),
  severity TEXT CHECK (severity IN ('slight', 'moderate', 'severe')),
  extent_affected INTEGER,
  extent_of INTEGER,
  note TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  UNIQUE (case_row, number),
  CHECK ((extent_affected IS NULL) = (extent_of IS NULL)),
  CHECK (extent_of IS NULL OR (extent_of >= 1 AND extent_affected BETWEEN 0 AND extent_of))
) STRICT;
-- Damage tags are answered from these alone: by part, and by kind where the part does not matter.
CREATE INDEX finding_by_part ON finding (component, kind, zone, class, presence, case_row);
CREATE INDEX finding_by_kind ON finding (kind, zone, class, presence, case_row);

-- Every number ever given: never given twice, and given back to a finding whose removal is undone.
CREATE TABLE finding_number (
  id INTEGER PRIMARY KEY,
  case_row INTEGER NOT NULL REFERENCES teardown_case (id),
  number INTEGER NOT NULL CHECK (number >= 1),
  finding_uuid TEXT NOT NULL UNIQUE,
  -- What the finding was when it was removed; NULL while it never was. It comes back as nothing else:
  -- a class is changed with its reason only.
  class_at_removal TEXT CHECK (class_at_removal IN ('primary', 'secondary', 'unrelated', 'undecided')),
  UNIQUE (case_row, number)
) STRICT;

-- Outlives the finding itself.
CREATE TABLE finding_class_change (
  id INTEGER PRIMARY KEY,
  finding_uuid TEXT NOT NULL REFERENCES finding_number (finding_uuid),
  at TEXT NOT NULL CHECK (at GLOB '????-??-??T??:??:??.???Z'),
  who TEXT NOT NULL,
  from_class TEXT NOT NULL CHECK (from_class IN ('primary', 'secondary', 'unrelated', 'undecided')),
  to_class TEXT NOT NULL CHECK (to_class IN ('primary', 'secondary', 'unrelated', 'undecided')),
  reason TEXT NOT NULL CHECK (length(reason) >= 1),
  CHECK (from_class <> to_class)
) STRICT;
CREATE INDEX finding_class_change_of ON finding_class_change (finding_uuid);

CREATE TABLE mark (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  photo_row INTEGER NOT NULL REFERENCES photo (id),
  finding_row INTEGER REFERENCES finding (id),
  kind TEXT NOT NULL,
  geometry_version INTEGER NOT NULL CHECK (geometry_version >= 1),
  geometry TEXT NOT NULL CHECK (json_valid(geometry)),
  drawing_order INTEGER NOT NULL CHECK (drawing_order >= 0),
  revision INTEGER NOT NULL CHECK (revision >= 1)
) STRICT;
CREATE INDEX mark_on_photo ON mark (photo_row, drawing_order);
CREATE INDEX mark_of_finding ON mark (finding_row);

CREATE TABLE chain_node (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  case_row INTEGER NOT NULL REFERENCES teardown_case (id),
  kind TEXT NOT NULL CHECK (kind IN ('root-cause', 'condition', 'event', 'finding', 'claim')),
  -- The finding it stands for, the pack's mechanism or condition it names, or words of its own.
  finding_row INTEGER REFERENCES finding (id),
  term TEXT,
  words TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1),
  CHECK ((kind = 'finding') = (finding_row IS NOT NULL))
) STRICT;
CREATE INDEX chain_node_of_case ON chain_node (case_row);
CREATE INDEX chain_node_of_finding ON chain_node (finding_row);

CREATE TABLE chain_link (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  cause_row INTEGER NOT NULL REFERENCES chain_node (id),
  effect_row INTEGER NOT NULL REFERENCES chain_node (id),
  reason TEXT NOT NULL,
  certainty TEXT NOT NULL CHECK (certainty IN ('established', 'likely', 'possible')),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  UNIQUE (cause_row, effect_row),
  CHECK (cause_row <> effect_row)
) STRICT;
CREATE INDEX chain_link_to_effect ON chain_link (effect_row);

-- Append-only, each line's hash covering the one before it.
CREATE TABLE journal (
  number INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (at GLOB '????-??-??T??:??:??.???Z'),
  who TEXT NOT NULL,
  case_uuid TEXT,
  what TEXT NOT NULL,
  details TEXT NOT NULL CHECK (json_valid(details)),
  previous_hash TEXT NOT NULL CHECK (length(previous_hash) = 64),
  hash TEXT NOT NULL UNIQUE CHECK (length(hash) = 64)
) STRICT;
CREATE INDEX journal_of_case ON journal (case_uuid, number);

-- Also keeps a REPLACE from taking the place of an old line: that deletes without asking the trigger for it.
CREATE TRIGGER journal_grows_at_its_end BEFORE INSERT ON journal
WHEN NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM journal)
  OR NEW.previous_hash IS NOT (SELECT coalesce(
    (SELECT hash FROM journal ORDER BY number DESC LIMIT 1),
    '0000000000000000000000000000000000000000000000000000000000000000'))
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_is_never_changed BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;
CREATE TRIGGER journal_is_never_shortened BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'the journal is append-only'); END;

CREATE TRIGGER class_history_is_never_changed BEFORE UPDATE ON finding_class_change
BEGIN SELECT RAISE(ABORT, 'the class history is append-only'); END;
CREATE TRIGGER class_history_is_never_shortened BEFORE DELETE ON finding_class_change
BEGIN SELECT RAISE(ABORT, 'the class history is append-only'); END;

CREATE TABLE job (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  kind TEXT NOT NULL,
  case_row INTEGER REFERENCES teardown_case (id),
  state TEXT NOT NULL CHECK (state IN ('waiting', 'running', 'done', 'stopped', 'interrupted', 'failed')),
  phase TEXT NOT NULL,
  done INTEGER NOT NULL CHECK (done >= 0),
  total INTEGER NOT NULL CHECK (total >= 0),
  started_at TEXT NOT NULL CHECK (started_at GLOB '????-??-??T??:??:??.???Z'),
  ended_at TEXT CHECK (ended_at GLOB '????-??-??T??:??:??.???Z'),
  document TEXT CHECK (document IS NULL OR json_valid(document)),
  error TEXT CHECK (error IS NULL OR json_valid(error))
) STRICT;

CREATE TABLE job_item (
  id INTEGER PRIMARY KEY,
  job_row INTEGER NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  place INTEGER NOT NULL,
  source_name TEXT NOT NULL,
  outcome TEXT NOT NULL CHECK (outcome IN ('added', 'already-here', 'failed', 'not-begun')),
  photo_uuid TEXT,
  also_in TEXT NOT NULL CHECK (json_valid(also_in)),
  error TEXT CHECK (error IS NULL OR json_valid(error)),
  UNIQUE (job_row, place)
) STRICT;

-- What can be searched: one document for each case, photo and finding, kept by the triggers below.
CREATE TABLE search_document (
  id INTEGER PRIMARY KEY,
  case_row INTEGER NOT NULL REFERENCES teardown_case (id),
  subject TEXT NOT NULL CHECK (subject IN ('case', 'photo', 'finding')),
  subject_row INTEGER NOT NULL,
  title TEXT NOT NULL,
  body TEXT NOT NULL,
  identifiers TEXT NOT NULL,
  UNIQUE (subject, subject_row)
) STRICT;
CREATE INDEX search_document_of_case ON search_document (case_row);

CREATE VIRTUAL TABLE search_text USING fts5 (
  title, body, content = 'search_document', content_rowid = 'id',
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);
CREATE VIRTUAL TABLE search_identifier USING fts5 (
  identifiers, content = 'search_document', content_rowid = 'id', tokenize = 'trigram'
);

CREATE TRIGGER search_document_added AFTER INSERT ON search_document BEGIN
  INSERT INTO search_text (rowid, title, body) VALUES (NEW.id, NEW.title, NEW.body);
  INSERT INTO search_identifier (rowid, identifiers) VALUES (NEW.id, NEW.identifiers);
END;
CREATE TRIGGER search_document_gone AFTER DELETE ON search_document BEGIN
  INSERT INTO search_text (search_text, rowid, title, body) VALUES ('delete', OLD.id, OLD.title, OLD.body);
  INSERT INTO search_identifier (search_identifier, rowid, identifiers) VALUES ('delete', OLD.id, OLD.identifiers);
END;
CREATE TRIGGER search_document_changed AFTER UPDATE ON search_document BEGIN
  INSERT INTO search_text (search_text, rowid, title, body) VALUES ('delete', OLD.id, OLD.title, OLD.body);
  INSERT INTO search_identifier (search_identifier, rowid, identifiers) VALUES ('delete', OLD.id, OLD.identifiers);
  INSERT INTO search_text (rowid, title, body) VALUES (NEW.id, NEW.title, NEW.body);
  INSERT INTO search_identifier (rowid, identifiers) VALUES (NEW.id, NEW.identifiers);
END;

CREATE VIEW case_words AS
SELECT c.id AS case_row, c.id AS subject_row,
  c.number || ' ' || c.unit_maker || ' ' || c.unit_model AS title,
  c.customer || char(10) || c.claim || char(10) || c.conclusion AS body,
  c.number || ' ' || c.unit_model || ' ' || c.unit_serial || ' ' || c.unit_part_number AS identifiers
FROM teardown_case c;

CREATE VIEW photo_words AS
SELECT p.case_row, p.id AS subject_row, p.caption AS title, p.source_name AS body, '' AS identifiers
FROM photo p WHERE p.removed_at IS NULL;

CREATE VIEW finding_words AS
SELECT f.case_row, f.id AS subject_row,
  coalesce(component.label, f.component) || coalesce(', ' || position.label, '')
    || coalesce(', ' || zone.label, '') || ': ' || coalesce(kind.label, f.kind) AS title,
  f.note AS body, '' AS identifiers
FROM finding f
JOIN teardown_case c ON c.id = f.case_row
LEFT JOIN pack_term component
  ON component.pack_row = c.pack_row AND component.list = 'component' AND component.owner = '' AND component.term = f.component
LEFT JOIN pack_term position
  ON position.pack_row = c.pack_row AND position.list = 'position' AND position.owner = '' AND position.term = f.position
LEFT JOIN pack_term zone
  ON zone.pack_row = c.pack_row AND zone.list = 'zone' AND zone.owner = f.component AND zone.term = f.zone
LEFT JOIN pack_term kind
  ON kind.pack_row = c.pack_row AND kind.list = 'kind' AND kind.owner = '' AND kind.term = f.kind;

CREATE TRIGGER case_is_searchable AFTER INSERT ON teardown_case BEGIN
  INSERT INTO search_document (case_row, subject, subject_row, title, body, identifiers)
  SELECT case_row, 'case', subject_row, title, body, identifiers FROM case_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER case_words_changed
AFTER UPDATE OF number, unit_maker, unit_model, unit_serial, unit_part_number, customer, claim, conclusion ON teardown_case
BEGIN
  DELETE FROM search_document WHERE subject = 'case' AND subject_row = NEW.id;
  INSERT INTO search_document (case_row, subject, subject_row, title, body, identifiers)
  SELECT case_row, 'case', subject_row, title, body, identifiers FROM case_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER photo_is_searchable AFTER INSERT ON photo BEGIN
  INSERT INTO search_document (case_row, subject, subject_row, title, body, identifiers)
  SELECT case_row, 'photo', subject_row, title, body, identifiers FROM photo_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER photo_words_changed AFTER UPDATE OF caption, source_name, removed_at ON photo BEGIN
  DELETE FROM search_document WHERE subject = 'photo' AND subject_row = NEW.id;
  INSERT INTO search_document (case_row, subject, subject_row, title, body, identifiers)
  SELECT case_row, 'photo', subject_row, title, body, identifiers FROM photo_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER photo_is_gone AFTER DELETE ON photo BEGIN
  DELETE FROM search_document WHERE subject = 'photo' AND subject_row = OLD.id;
END;
CREATE TRIGGER finding_is_searchable AFTER INSERT ON finding BEGIN
  INSERT INTO search_document (case_row, subject, subject_row, title, body, identifiers)
  SELECT case_row, 'finding', subject_row, title, body, identifiers FROM finding_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER finding_words_changed AFTER UPDATE OF component, position, zone, kind, note ON finding BEGIN
  DELETE FROM search_document WHERE subject = 'finding' AND subject_row = NEW.id;
  INSERT INTO search_document (case_row, subject, subject_row, title, body, identifiers)
  SELECT case_row, 'finding', subject_row, title, body, identifiers FROM finding_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER finding_is_gone AFTER DELETE ON finding BEGIN
  DELETE FROM search_document WHERE subject = 'finding' AND subject_row = OLD.id;
END;
