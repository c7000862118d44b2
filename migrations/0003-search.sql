-- The search over everything that was written, made anew. What is searched is derived, so that an older library is
-- brought up to date by writing it again from the cases themselves.
--
-- A document is what one thing says: a case, a finding, a photo, a party, a line of custody. The full text is kept by
-- page: some documents of one case and one subject together, so that a word that stands in every caption of a library
-- is listed once for some dozens of photos and not for each. A page's number says whose it is:
--   case_row << 10  |  subject << 8  |  which page of that subject, counted round from 0 to 255
-- with subject 0 the case, 1 its findings (32 numbers to a page), 2 its photos (64 rows to a page), 3 the rest: its
-- parties on page 0, its custody on page 1.
-- Between two documents, and between two fields of one, stands U+E000, a private character that the tokenizer takes
-- for a word: no phrase reaches from one into the next.

DROP TRIGGER case_is_searchable;
DROP TRIGGER case_words_changed;
DROP TRIGGER photo_is_searchable;
DROP TRIGGER photo_words_changed;
DROP TRIGGER photo_is_gone;
DROP TRIGGER finding_is_searchable;
DROP TRIGGER finding_words_changed;
DROP TRIGGER finding_is_gone;
DROP VIEW case_words;
DROP VIEW photo_words;
DROP VIEW finding_words;
-- Pieces of serial and part numbers are compared by the program, which knows them without their hyphens.
DROP TABLE search_identifier;
DROP TABLE search_text;
DROP TABLE search_document;

CREATE TABLE search_document (
  page INTEGER NOT NULL,
  subject_row INTEGER NOT NULL,
  title TEXT NOT NULL,
  body TEXT NOT NULL,
  case_row INTEGER GENERATED ALWAYS AS (page >> 10) VIRTUAL,
  subject TEXT GENERATED ALWAYS AS (CASE (page >> 8) & 3 WHEN 0 THEN 'case' WHEN 1 THEN 'finding' WHEN 2 THEN 'photo'
    ELSE CASE page & 255 WHEN 0 THEN 'party' ELSE 'custody' END END) VIRTUAL,
  PRIMARY KEY (page, subject_row),
  CHECK (title <> '' OR body <> '')
) STRICT, WITHOUT ROWID;

CREATE VIEW search_page AS
SELECT page AS id, group_concat(title, char(10, 57344, 10)) AS title, group_concat(body, char(10, 57344, 10)) AS body
FROM search_document GROUP BY page;

CREATE VIRTUAL TABLE search_text USING fts5 (
  title, body, content = 'search_page', content_rowid = 'id',
  tokenize = 'unicode61 remove_diacritics 2', prefix = '2 3'
);

-- What each thing says now; nothing where it has no words or was taken out or struck.
CREATE VIEW case_words AS
SELECT c.id << 10 AS page, c.id AS subject_row,
  c.number || ' ' || c.unit_maker || ' ' || c.unit_model AS title,
  c.customer || char(10, 57344, 10) || c.claim || char(10, 57344, 10) || c.state_received || char(10, 57344, 10)
    || c.conclusion AS body
FROM teardown_case c;

CREATE VIEW finding_words AS
SELECT (f.case_row << 10) | (1 << 8) | ((f.number >> 5) & 255) AS page, f.id AS subject_row,
  coalesce(component.label, f.component) || coalesce(', ' || position.label, '')
    || coalesce(', ' || zone.label, '') || ': ' || coalesce(kind.label, f.kind) AS title,
  f.note AS body
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

CREATE VIEW photo_words AS
SELECT (p.case_row << 10) | (2 << 8) | ((p.id >> 6) & 255) AS page, p.id AS subject_row,
  iif(p.removed_at IS NULL, p.caption, '') AS title,
  iif(p.removed_at IS NULL, coalesce((
    SELECT group_concat(words, char(10, 57344, 10)) FROM (
      SELECT json_extract(m.geometry, '$.words') AS words FROM mark m
      WHERE m.photo_row = p.id AND m.kind = 'text' ORDER BY m.drawing_order, m.id)
  ), ''), '') AS body
FROM photo p;

CREATE VIEW party_words AS
SELECT (p.case_row << 10) | (3 << 8) AS page, p.id AS subject_row, p.name AS title, p.details AS body FROM party p;

CREATE VIEW custody_words AS
SELECT (e.case_row << 10) | (3 << 8) | 1 AS page, e.id AS subject_row,
  iif(e.struck_at IS NULL, e.item, '') AS title,
  iif(e.struck_at IS NULL, e.handed_by || char(10, 57344, 10) || e.handed_to || char(10, 57344, 10) || e.why, '') AS body
FROM custody_entry e;

INSERT INTO search_document (page, subject_row, title, body)
SELECT * FROM (
  SELECT * FROM case_words UNION ALL SELECT * FROM finding_words UNION ALL SELECT * FROM photo_words
  UNION ALL SELECT * FROM party_words UNION ALL SELECT * FROM custody_words
) WHERE title <> '' OR body <> '';
INSERT INTO search_text (search_text) VALUES ('rebuild');

-- A page is taken out of the index as it was and put in again as it is.
CREATE TRIGGER search_page_before_a_document_more BEFORE INSERT ON search_document BEGIN
  INSERT INTO search_text (search_text, rowid, title, body)
  SELECT 'delete', id, title, body FROM search_page WHERE id = NEW.page;
END;
CREATE TRIGGER search_page_with_a_document_more AFTER INSERT ON search_document BEGIN
  INSERT INTO search_text (rowid, title, body) SELECT id, title, body FROM search_page WHERE id = NEW.page;
END;
CREATE TRIGGER search_page_before_a_document_less BEFORE DELETE ON search_document BEGIN
  INSERT INTO search_text (search_text, rowid, title, body)
  SELECT 'delete', id, title, body FROM search_page WHERE id = OLD.page;
END;
CREATE TRIGGER search_page_with_a_document_less AFTER DELETE ON search_document BEGIN
  INSERT INTO search_text (rowid, title, body) SELECT id, title, body FROM search_page WHERE id = OLD.page;
END;
CREATE TRIGGER search_page_before_a_document_changed BEFORE UPDATE ON search_document BEGIN
  SELECT RAISE(ABORT, 'a document stays on its page') WHERE NEW.page <> OLD.page;
  INSERT INTO search_text (search_text, rowid, title, body)
  SELECT 'delete', id, title, body FROM search_page WHERE id = OLD.page;
END;
CREATE TRIGGER search_page_with_a_document_changed AFTER UPDATE ON search_document BEGIN
  INSERT INTO search_text (rowid, title, body) SELECT id, title, body FROM search_page WHERE id = NEW.page;
END;

-- Writes a document as it shall be: added, changed, or gone where nothing is said any more.
CREATE VIEW search_entry AS SELECT page, subject_row, title, body FROM search_document;
CREATE TRIGGER search_entry_is_written INSTEAD OF INSERT ON search_entry BEGIN
  DELETE FROM search_document
  WHERE page = NEW.page AND subject_row = NEW.subject_row AND NEW.title = '' AND NEW.body = '';
  UPDATE search_document SET title = NEW.title, body = NEW.body
  WHERE page = NEW.page AND subject_row = NEW.subject_row AND (title, body) IS NOT (NEW.title, NEW.body);
  INSERT INTO search_document (page, subject_row, title, body)
  SELECT NEW.page, NEW.subject_row, NEW.title, NEW.body
  WHERE (NEW.title <> '' OR NEW.body <> '')
    AND NOT EXISTS (SELECT 1 FROM search_document WHERE page = NEW.page AND subject_row = NEW.subject_row);
END;

CREATE TRIGGER case_is_searchable AFTER INSERT ON teardown_case BEGIN
  INSERT INTO search_entry SELECT * FROM case_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER case_words_changed
AFTER UPDATE OF number, unit_maker, unit_model, customer, claim, state_received, conclusion ON teardown_case BEGIN
  INSERT INTO search_entry SELECT * FROM case_words WHERE subject_row = NEW.id;
END;

CREATE TRIGGER finding_is_searchable AFTER INSERT ON finding BEGIN
  INSERT INTO search_entry SELECT * FROM finding_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER finding_words_changed AFTER UPDATE OF component, position, zone, kind, note ON finding BEGIN
  INSERT INTO search_entry SELECT * FROM finding_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER finding_is_gone AFTER DELETE ON finding BEGIN
  DELETE FROM search_document
  WHERE page = (OLD.case_row << 10) | (1 << 8) | ((OLD.number >> 5) & 255) AND subject_row = OLD.id;
END;

CREATE TRIGGER photo_is_searchable AFTER INSERT ON photo WHEN NEW.caption <> '' BEGIN
  INSERT INTO search_entry SELECT * FROM photo_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER photo_words_changed AFTER UPDATE OF caption, removed_at ON photo
WHEN (NEW.caption, NEW.removed_at) IS NOT (OLD.caption, OLD.removed_at) BEGIN
  INSERT INTO search_entry SELECT * FROM photo_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER photo_is_gone AFTER DELETE ON photo BEGIN
  DELETE FROM search_document
  WHERE page = (OLD.case_row << 10) | (2 << 8) | ((OLD.id >> 6) & 255) AND subject_row = OLD.id;
END;
-- The words of a text mark stand on its photo.
CREATE TRIGGER mark_words_are_searchable AFTER INSERT ON mark WHEN NEW.kind = 'text' BEGIN
  INSERT INTO search_entry SELECT * FROM photo_words WHERE subject_row = NEW.photo_row;
END;
CREATE TRIGGER mark_words_changed AFTER UPDATE OF photo_row, kind, geometry, drawing_order ON mark
WHEN NEW.kind = 'text' OR OLD.kind = 'text' BEGIN
  INSERT INTO search_entry SELECT * FROM photo_words WHERE subject_row IN (NEW.photo_row, OLD.photo_row);
END;
CREATE TRIGGER mark_words_are_gone AFTER DELETE ON mark WHEN OLD.kind = 'text' BEGIN
  INSERT INTO search_entry SELECT * FROM photo_words WHERE subject_row = OLD.photo_row;
END;

CREATE TRIGGER party_is_searchable AFTER INSERT ON party BEGIN
  INSERT INTO search_entry SELECT * FROM party_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER party_words_changed AFTER UPDATE OF name, details ON party BEGIN
  INSERT INTO search_entry SELECT * FROM party_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER party_is_gone AFTER DELETE ON party BEGIN
  DELETE FROM search_document WHERE page = (OLD.case_row << 10) | (3 << 8) AND subject_row = OLD.id;
END;
CREATE TRIGGER custody_is_searchable AFTER INSERT ON custody_entry BEGIN
  INSERT INTO search_entry SELECT * FROM custody_words WHERE subject_row = NEW.id;
END;
CREATE TRIGGER custody_words_changed AFTER UPDATE OF struck_at ON custody_entry BEGIN
  INSERT INTO search_entry SELECT * FROM custody_words WHERE subject_row = NEW.id;
END;

-- A photo is looked for by the name of its file as well: the whole of it, with or without its ending.
CREATE INDEX photo_by_name ON photo (source_name COLLATE NOCASE);
