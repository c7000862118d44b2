-- What a file says of its own origin where it says that no camera took it: the code of IPTC's digital source type, or
-- the words of its description. NULL where it says nothing of the kind; of pictures that came in before, nobody looked.

ALTER TABLE blob ADD COLUMN declared_synthetic TEXT CHECK (length(declared_synthetic) BETWEEN 1 AND 200);
