-- How each case's report is to be made. A case without a row has the plan that a new case has, at revision 1.

CREATE TABLE report_plan (
  id INTEGER PRIMARY KEY,
  case_row INTEGER NOT NULL UNIQUE REFERENCES teardown_case (id),
  plates_a_page INTEGER NOT NULL CHECK (plates_a_page IN (1, 2, 4)),
  print_camera_places INTEGER NOT NULL CHECK (print_camera_places IN (0, 1)),
  revision INTEGER NOT NULL CHECK (revision >= 1)
) STRICT;

CREATE TABLE report_section (
  id INTEGER PRIMARY KEY,
  plan_row INTEGER NOT NULL REFERENCES report_plan (id) ON DELETE CASCADE,
  place INTEGER NOT NULL CHECK (place >= 0),
  stands TEXT NOT NULL CHECK (stands IN ('before-findings', 'before-answer')),
  heading TEXT NOT NULL,
  words TEXT NOT NULL,
  UNIQUE (plan_row, place)
) STRICT;
