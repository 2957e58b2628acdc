-- Each carries the other's column, so that rows one finds are sifted by the other without being looked at.
DROP INDEX worklist_start;
DROP INDEX worklist_name;
CREATE INDEX worklist_start ON worklist (start, id, name);
CREATE INDEX worklist_name ON worklist (name, id, start);
