# DuckDB's grouped query on one thread, readings in a table in memory: the first run, and the middle one of eleven.
import array, json, os, sys, tempfile, time
import duckdb

folder, count = sys.argv[1], int(sys.argv[2])
def column(name, kind):
    values = array.array(kind)
    with open(f"{folder}/{name}", "rb") as file:
        values.fromfile(file, count)
    return values

db = duckdb.connect(config={"threads": 1})
csv = os.path.join(tempfile.mkdtemp(), "readings.csv")
with open(csv, "w") as file:
    file.write("setup,value\n")
    file.writelines(f"{s},{v!r}\n" for s, v in zip(column("setup", "i"), column("value", "d")))
db.execute(f"CREATE TABLE readings AS SELECT setup::INTEGER AS setup, value::DOUBLE AS value FROM '{csv}'")
os.remove(csv)
query = "SELECT setup, count(*), avg(value), var_pop(value) * count(*) FROM readings GROUP BY setup"
times = []
for _ in range(11):
    # The result stays in the database, so that handing rows to Python is not counted.
    db.execute("DROP TABLE IF EXISTS collapsed")
    before = time.perf_counter()
    db.execute(f"CREATE TABLE collapsed AS {query}")
    times.append((time.perf_counter() - before) * 1000)
print(json.dumps({"first": times[0], "middle": sorted(times)[5], "version": duckdb.__version__}))
