"""What both scripts do, but for reading the form."""
import email
import email.policy
import os
import re
import sqlite3
import sys

NEEDED = ("contact_name", "contact_email", "project", "order_number", "station_mark", "finish", "lettering")
MOST = 12


def problems(values):
    for name in NEEDED:
        if name in values and values[name] in ("", "None"):
            yield f"{name} is empty"
    for name, value in values.items():
        if re.search(r"_row\d$", name) and len(value) > MOST:
            yield f"{name} has {len(value)} characters, {MOST} fit"


def run(fields):
    letters, answers = sys.argv[1:]
    os.makedirs(answers, exist_ok=True)
    record = sqlite3.connect(os.path.join(answers, "record.sqlite"))
    record.execute("PRAGMA synchronous = FULL")
    record.execute("CREATE TABLE letters (name TEXT PRIMARY KEY, answer TEXT)")
    for name in sorted(os.listdir(letters)):
        with open(os.path.join(letters, name), "rb") as file:
            letter = email.message_from_binary_file(file, policy=email.policy.default)
        lines = []
        for part in letter.iter_attachments():
            values = dict(fields(part.get_payload(decode=True)))
            lines += [f"{part.get_filename()}: {one}" for one in problems(values)]
        answer = "\n".join(["FAIL", *lines] if lines else ["PASS"])
        with open(os.path.join(answers, name + ".txt"), "w") as file:
            file.write(answer)
        record.execute("INSERT INTO letters VALUES (?, ?)", (name, answer))
        record.commit()
