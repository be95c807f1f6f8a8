/** What lies beside the entries for whoever opens the archive without this app, in ten years or with other tools. */

/** Checks everything by Python's own library: run inside the unpacked folder, or on the archive itself. */
export const checkInPython = `import hashlib, json, sys, zipfile
path = sys.argv[1]
data = open(path, "rb").read()
archive = zipfile.ZipFile(path)
sha = lambda b: hashlib.sha256(b).hexdigest()
seal = archive.comment.decode()
assert seal == "sha256:" + sha(data[: len(data) - len(seal)]), "the archive is not as it was made"
manifest = json.loads(archive.read("manifest.json"))
for part, name in [("readMe", "READ-ME.txt"), ("entries", "entries.ndjson"), ("damaged", "damaged.ndjson")]:
    if manifest[part]:
        assert sha(archive.read(name)) == manifest[part]["sha256"], name
ends = {"image/jpeg": "jpg", "image/png": "png", "image/webp": "webp", "application/pdf": "pdf"}
for f in manifest["files"]:
    name = "files/" + f["sha256"] + "." + ends[f["type"]]
    assert sha(archive.read(name)) == f["sha256"], name
links = {}
for line in archive.read("entries.ndjson").decode("utf-8").split("\\n")[:-1]:
    entry = json.loads(line)
    bare = line.replace(',"hash":"' + entry["hash"] + '"', "", 1)
    assert sha(bare.encode("utf-8")) == entry["hash"], "an entry is not as it was written: " + entry["id"]
    links[entry["device"], entry["counter"]] = entry
for (device, counter), entry in links.items():
    before = links.get((device, counter - 1))
    if before and entry["previous"] != before["hash"]:
        print("does not follow the one before it:", entry["id"])
print(len(links), "entries and", len(manifest["files"]), "photos and files are as they were written")`;

export const readMe = `A BACKUP OF THE WASTE AND SAFETY BOOK OF A WORKSHOP

Made by Leesbook. Keep this file as it is: Leesbook reads it again under
Record > Restore or join. Packed again by another program it can still be
read by people, but Leesbook no longer takes it.

It is an ordinary zip archive. What is in it:

  entries.ndjson   every entry, one a line, each a JSON text in the one form
                   that RFC 8785 gives it, in UTF-8. Its "hash" is the SHA-256
                   of that same line without ,"hash":"...". Its "previous" is
                   the hash of the entry that the same device wrote before it.
  damaged.ndjson   only if there were any: entries that could not be read, or
                   did not fit their hash, as they lay there.
  files/           photos, and papers that came as a PDF. The name of each is
                   the SHA-256 of its bytes; entries name it by that.
  manifest.json    what this backup is: when and by which version it was made,
                   the last entry of each device, the size and the SHA-256 of
                   every other file in it; where entries were lost or damaged
                   and somebody chose to go on without them, "without" tells.

The comment of the archive is the SHA-256 of every byte before it.

TO LOOK INTO IT
  Open it with any program for zip archives. Entries are text; photos and
  papers open as they are.

TO CHECK IT
  sha256sum entries.ndjson files/*
  and compare with manifest.json and with the names of the files. Or all of it
  at once: save the lines below as check.py, then  python3 check.py BACKUP.zip

IF ITS NAME ENDS IN .age
  it was locked with a passphrase. Leesbook opens it, and so does any program
  that knows the age format (age-encryption.org/v1):
    age --decrypt --output backup.zip BACKUP.zip.age
  Nobody can open it without the passphrase.

WHAT THE HASHES SHOW
  that nothing in here has changed since it was made, by accident or by
  somebody who could not make a new manifest. They do not show who made it.

---- check.py ----
${checkInPython}
`;
