-- What a real case needs beside the claim's words: who is party to it, the unit's two observations, its life in
-- service, how it arrived, who had it when, who has a stake in the answer; which way blades are bent; who took a
-- photo out.

ALTER TABLE teardown_case ADD COLUMN rotation_sense TEXT CHECK (rotation_sense IN ('clockwise', 'anticlockwise'));
ALTER TABLE teardown_case ADD COLUMN rotation_seen_from TEXT;
ALTER TABLE teardown_case ADD COLUMN rotation_photo_row INTEGER REFERENCES photo (id);
ALTER TABLE teardown_case ADD COLUMN thread_hand TEXT CHECK (thread_hand IN ('right', 'left', 'no-thread'));
ALTER TABLE teardown_case ADD COLUMN thread_photo_row INTEGER REFERENCES photo (id);
CREATE INDEX case_of_rotation_photo ON teardown_case (rotation_photo_row) WHERE rotation_photo_row IS NOT NULL;
CREATE INDEX case_of_thread_photo ON teardown_case (thread_photo_row) WHERE thread_photo_row IS NOT NULL;
-- Wall times as told, as JSON {local, offsetMinutes, precision}.
ALTER TABLE teardown_case ADD COLUMN fitted_on TEXT CHECK (fitted_on IS NULL OR json_valid(fitted_on));
ALTER TABLE teardown_case ADD COLUMN failed_on TEXT CHECK (failed_on IS NULL OR json_valid(failed_on));
ALTER TABLE teardown_case ADD COLUMN time_in_service REAL CHECK (time_in_service >= 0);
ALTER TABLE teardown_case ADD COLUMN time_in_service_unit TEXT
  CHECK (time_in_service_unit IN ('days', 'weeks', 'months', 'years'));
ALTER TABLE teardown_case ADD COLUMN running_hours REAL CHECK (running_hours >= 0);
ALTER TABLE teardown_case ADD COLUMN state_received TEXT NOT NULL DEFAULT '';
ALTER TABLE teardown_case ADD COLUMN interest TEXT NOT NULL DEFAULT 'not-stated'
  CHECK (interest IN ('not-stated', 'none', 'declared'));
ALTER TABLE teardown_case ADD COLUMN interest_words TEXT NOT NULL DEFAULT '';

CREATE TABLE party (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  case_row INTEGER NOT NULL REFERENCES teardown_case (id),
  name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 160),
  details TEXT NOT NULL,
  revision INTEGER NOT NULL CHECK (revision >= 1)
) STRICT;
CREATE INDEX party_of_case ON party (case_row);

CREATE TABLE party_role (
  id INTEGER PRIMARY KEY,
  party_row INTEGER NOT NULL REFERENCES party (id) ON DELETE CASCADE,
  role TEXT NOT NULL CHECK (role IN ('claims', 'instructs', 'pays', 'owns', 'operates', 'fitted', 'rebuilt', 'supplied',
    'insures', 'other')),
  UNIQUE (party_row, role)
) STRICT;

-- Never edited and never deleted: a wrong entry is struck, once, with a reason.
CREATE TABLE custody_entry (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE CHECK (length(uuid) = 36),
  case_row INTEGER NOT NULL REFERENCES teardown_case (id),
  item TEXT NOT NULL CHECK (length(item) BETWEEN 1 AND 200),
  event TEXT NOT NULL CHECK (event IN ('received', 'moved', 'released', 'opened', 'cleaned', 'sectioned', 'other')),
  handed_by TEXT NOT NULL CHECK (length(handed_by) BETWEEN 1 AND 160),
  handed_to TEXT NOT NULL,
  at_local TEXT NOT NULL CHECK (at_local GLOB '????-??-??T??:??:??'),
  at_offset_minutes INTEGER,
  at_precision TEXT NOT NULL CHECK (at_precision IN ('year', 'month', 'day', 'minute', 'second')),
  why TEXT NOT NULL,
  entered_at TEXT NOT NULL CHECK (entered_at GLOB '????-??-??T??:??:??.???Z'),
  entered_by TEXT NOT NULL,
  struck_at TEXT CHECK (struck_at GLOB '????-??-??T??:??:??.???Z'),
  struck_by TEXT,
  struck_reason TEXT CHECK (length(struck_reason) >= 1),
  revision INTEGER NOT NULL CHECK (revision >= 1),
  CHECK ((struck_at IS NULL) = (struck_reason IS NULL) AND (struck_at IS NULL) = (struck_by IS NULL)),
  CHECK (event NOT IN ('received', 'moved', 'released') OR handed_to <> '')
) STRICT;
CREATE INDEX custody_of_case ON custody_entry (case_row, at_local);

CREATE TRIGGER custody_is_never_rewritten BEFORE UPDATE ON custody_entry
WHEN OLD.struck_at IS NOT NULL OR NEW.struck_at IS NULL
  OR (NEW.id, NEW.uuid, NEW.case_row, NEW.item, NEW.event, NEW.handed_by, NEW.handed_to, NEW.at_local, NEW.at_precision,
      NEW.why, NEW.entered_at, NEW.entered_by)
    IS NOT (OLD.id, OLD.uuid, OLD.case_row, OLD.item, OLD.event, OLD.handed_by, OLD.handed_to, OLD.at_local,
      OLD.at_precision, OLD.why, OLD.entered_at, OLD.entered_by)
  OR NEW.at_offset_minutes IS NOT OLD.at_offset_minutes
BEGIN SELECT RAISE(ABORT, 'a custody entry is struck, never rewritten'); END;
CREATE TRIGGER custody_is_never_shortened BEFORE DELETE ON custody_entry
BEGIN SELECT RAISE(ABORT, 'a custody entry is struck, never deleted'); END;

ALTER TABLE finding ADD COLUMN bend_sense TEXT CHECK (bend_sense IN ('clockwise', 'anticlockwise'));
ALTER TABLE finding ADD COLUMN bend_seen_from TEXT CHECK ((bend_seen_from IS NULL) = (bend_sense IS NULL));

ALTER TABLE photo ADD COLUMN removed_by TEXT;
-- Every time a photo was out of its case and is back: its own line then says nothing of it any more.
CREATE TABLE photo_absence (
  id INTEGER PRIMARY KEY,
  photo_row INTEGER NOT NULL REFERENCES photo (id),
  out_at TEXT NOT NULL CHECK (out_at GLOB '????-??-??T??:??:??.???Z'),
  out_by TEXT NOT NULL,
  reason TEXT NOT NULL CHECK (length(reason) >= 1),
  back_at TEXT NOT NULL CHECK (back_at GLOB '????-??-??T??:??:??.???Z'),
  back_by TEXT NOT NULL
) STRICT;
CREATE INDEX photo_absence_of ON photo_absence (photo_row);
CREATE TRIGGER photo_absence_is_never_changed BEFORE UPDATE ON photo_absence
BEGIN SELECT RAISE(ABORT, 'what was taken out and put back stays on record'); END;
CREATE TRIGGER photo_absence_is_never_shortened BEFORE DELETE ON photo_absence
BEGIN SELECT RAISE(ABORT, 'what was taken out and put back stays on record'); END;
-- 1 where a picture that had been taken out of the case was dropped again and so put back.
ALTER TABLE job_item ADD COLUMN put_back INTEGER NOT NULL DEFAULT 0 CHECK (put_back IN (0, 1));
