"""Pools treated against untreated seed over all growers with Dask's distributed scheduler, from the CSV of DuckDB.

    python3 pool.py FOLDER WORKERS

Prints a line for each species: its name, the odds ratio of Mantel and Haenszel, chi-square with continuity correction.
"""
import json
import sys
from glob import glob

import dask.dataframe as dd
import pandas as pd
from dask.distributed import Client, LocalCluster


def main():
    folder, workers = sys.argv[1], int(sys.argv[2])
    with LocalCluster(n_workers=workers, threads_per_worker=1, dashboard_address=None) as cluster, Client(cluster) as client:
        counts = dd.read_csv(
            sorted(glob(f"{folder}/observations-*.csv")), usecols=["journal", "batch", "kind", "total"],
            dtype={"journal": "category", "batch": "category", "kind": "category", "total": "int16"}, blocksize="64MB")
        totals = counts.map_partitions(last_of, meta={"journal": str, "batch": str, "up": "int16"})
        batches = read(folder, "batches", ["journal", "lot", "batch", "is_treated", "tested"])
        lots = read(folder, "lots", ["journal", "lot", "species"])
        # A block may end within a batch, so the largest of its totals are compared once more.
        up = totals.compute().groupby(["journal", "batch"], as_index=False)["up"].max()
        sides = up.merge(batches, on=["journal", "batch"]).merge(lots, on=["journal", "lot"])
        strata = sides.groupby(["species", "journal", "lot", "is_treated"])[["up", "tested"]].sum().unstack()
        print(json.dumps({"workers": len(client.scheduler_info()["workers"]), "strata": len(strata)}))
        for species, found in pooled(strata).items():
            print(json.dumps({"species": species, **found}))


def last_of(counts):
    of_seed = counts[counts["kind"] == "germinated"]
    found = of_seed.groupby(["journal", "batch"], observed=True)["total"].max().reset_index(name="up")
    return found.astype({"journal": str, "batch": str})


def read(folder, table, columns):
    return pd.concat(pd.read_csv(file, usecols=columns) for file in sorted(glob(f"{folder}/{table}-*.csv")))


def pooled(strata):
    a, c = strata["up"][True].astype(float), strata["up"][False].astype(float)
    b, d = strata["tested"][True] - a, strata["tested"][False] - c
    n = a + b + c + d
    terms = pd.DataFrame({
        "r": a * d / n, "s": b * c / n, "excess": a - (a + b) * (a + c) / n,
        "variance": (a + b) * (c + d) * (a + c) * (b + d) / (n * n * (n - 1)),
    })[(a + c > 0) & (b + d > 0)]
    sums = terms.groupby("species").sum()
    apart = sums["excess"].abs()
    found = pd.DataFrame({
        "odds_ratio": sums["r"] / sums["s"],
        "chi_square": (apart - apart.clip(upper=0.5)) ** 2 / sums["variance"],
    })
    return found.to_dict(orient="index")


if __name__ == "__main__":
    main()
