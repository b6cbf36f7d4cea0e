-- A library of version 1, as it was: a recipe, a kitchen and an occasion with settings.
PRAGMA application_id = 1400205424;
PRAGMA user_version = 1;
CREATE TABLE recipes (
    id TEXT PRIMARY KEY,
    body TEXT NOT NULL
) STRICT;
CREATE TABLE kitchens (
    id TEXT PRIMARY KEY,
    body TEXT NOT NULL
) STRICT;
CREATE TABLE occasions (
    id TEXT PRIMARY KEY,
    body TEXT NOT NULL
) STRICT;
CREATE TABLE settings (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;
INSERT INTO recipes VALUES ('beetroot-soup', '{"id":"beetroot-soup","name":"Chilled beetroot soup 🥣","lines":[{"id":"beetroot","ingredient":"beetroot","amount":"1 1/2 kg","contains":[]}],"steps":[{"id":"boil","text":"Boil the beetroot","duration":[40,50,70],"attention":"keep an eye","uses":[{"burner":{"pan":24}}],"lines":["beetroot"]},{"id":"blend","duration":10}],"waits":[{"id":"chill","from":"blend.end","to":"serve","least":240,"most":2880,"keep":[{"place":"fridge","litres":3}]}],"variants":[{"id":"plain","name":"plain"}]}');
INSERT INTO recipes VALUES ('untitled', '{"id":"untitled"}');
INSERT INTO kitchens VALUES ('loft', '{"id":"loft","name":"O''Hara''s \"loft\"","burners":[{"id":"left","name":"left","size":28,"power":2000}],"cooks":[{"id":"maren","name":"Maren"}]}');
INSERT INTO occasions VALUES ('supper', '{"id":"supper","name":"Supper","kitchen":"loft","courses":[{"id":"soup","name":"Soup","serving":"2027-06-19T19:30","dishes":[{"id":"d1","recipe":"beetroot-soup","mix":[{"variant":"plain","portions":8}]}]}],"layout":{"starts":{"d1/plain/1/boil":"2027-06-19T10:00Z"}}}');
INSERT INTO settings VALUES ('open', 'supper');
INSERT INTO settings VALUES ('window.geometry', '800x600');
