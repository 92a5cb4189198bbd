"""The store's soil as an engineer would write it in Python: scipy sparse LU, factorised once.

Reads a case (JSON) from the file named first, writes a result (JSON) to the file named second.
Backward Euler, hourly. E1: one factor of a slice, all slices as right-hand sides, tubes joined by
the response of their blocks. E2: one global matrix of all slices with the air eliminated, one
factor with the fan on and one with it off.
Run by `deno task bench --reference` where Python with numpy and scipy is there.
"""

import json
import sys
import time

import numpy as np
import scipy.sparse as sp
import scipy.sparse.linalg as sla


def load(path):
    with open(path) as file:
        return json.load(file)


def matrices(case):
    n = len(case["capacity"])
    i, j, g = (np.array(case[k]) for k in ("from", "to", "conductance"))
    K = sp.coo_matrix((g, (i, i)), shape=(n, n)) + sp.coo_matrix((g, (j, j)), shape=(n, n))
    K = K - sp.coo_matrix((g, (i, j)), shape=(n, n)) - sp.coo_matrix((g, (j, i)), shape=(n, n))
    floor, outdoor = np.zeros(n), np.zeros(n)
    floor[case["floorCells"]] = case["floorConductances"]
    outdoor[case["outdoorCells"]] = case["outdoorConductances"]
    K = (K + sp.diags(floor + outdoor)).tocsc()
    B = np.zeros((n, len(case["tubes"])))
    for k, tube in enumerate(case["tubes"]):
        B[tube["cells"], k] = tube["weights"]
    return K, np.array(case["capacity"]), floor, outdoor, B


def per_slice(case, K, M, floor, outdoor, B, hours):
    dt = 3600.0
    slices = case["slices"]
    lu = sla.splu(
        (K + sp.diags(M / dt)).tocsc(),
        permc_spec="MMD_AT_PLUS_A",
        options={"SymmetricMode": True},
    )
    G = lu.solve(B)
    F = B.T @ G
    a = np.array(case["sensible"])
    R = np.array(case["soilSide"])
    rate = np.array(case["heatRate"])
    inverse = np.linalg.inv(np.diag(1 / a + R) + F)
    T = np.full((len(M), slices), case["start"])
    out = np.full(hours, np.nan)
    began = time.perf_counter()
    for hour in range(hours):
        u = case["series"][hour]
        right = (M / dt)[:, None] * T + (floor * u["floor"] + outdoor * u["outdoor"])[:, None]
        T = lu.solve(right)
        if u["fan"]:
            y = B.T @ T
            air = np.full(len(a), u["inlet"])
            q = np.empty((len(a), slices))
            for s in range(slices):
                q[:, s] = inverse @ (air - y[:, s])
                air = air - q[:, s] * case["segment"] / rate
            T += G @ q
            out[hour] = (rate @ air) / rate.sum()
    return time.perf_counter() - began, out


def one_global(case, K, M, floor, outdoor, B, hours):
    dt = 3600.0
    slices, n, tubes = case["slices"], len(M), B.shape[1]
    a = np.array(case["sensible"])
    R = np.array(case["soilSide"])
    rate = np.array(case["heatRate"])
    e = a / (1 + a * R)
    A = sp.kron(sp.eye(slices), K + sp.diags(M / dt)).tocoo()
    # unknown air at the end of each slice and tube: air_s = air_(s-1) - q seg/rate, q = e(air_(s-1) - B'T_s)
    m = slices * tubes
    rows, cols, values = list(A.row), list(A.col), list(A.data)
    right_in = np.zeros(slices * n + m)
    for s in range(slices):
        for k in range(tubes):
            air = slices * n + s * tubes + k
            share = e[k] * case["segment"] / rate[k]
            cells = np.array(case["tubes"][k]["cells"]) + s * n
            weights = np.array(case["tubes"][k]["weights"])
            rows.append(air), cols.append(air), values.append(1.0)
            for c, w in zip(cells, weights):
                rows.append(air), cols.append(c), values.append(-share * w)
                for c2, w2 in zip(cells, weights):
                    rows.append(c), cols.append(c2), values.append(w * e[k] * w2)
            if s > 0:
                rows.append(air), cols.append(air - tubes), values.append(-(1 - share))
                for c, w in zip(cells, weights):
                    rows.append(c), cols.append(air - tubes), values.append(-w * e[k])
            else:
                right_in[air] = 1 - share
                for c, w in zip(cells, weights):
                    right_in[c] += w * e[k]
    size = slices * n + m
    on = sla.splu(sp.coo_matrix((values, (rows, cols)), shape=(size, size)).tocsc())
    off = sla.splu(sp.kron(sp.eye(slices), K + sp.diags(M / dt)).tocsc())
    T = np.full(slices * n, case["start"])
    Mall = np.tile(M / dt, slices)
    fl, ou = np.tile(floor, slices), np.tile(outdoor, slices)
    out = np.full(hours, np.nan)
    began = time.perf_counter()
    for hour in range(hours):
        u = case["series"][hour]
        right = Mall * T + fl * u["floor"] + ou * u["outdoor"]
        if u["fan"]:
            x = on.solve(np.concatenate([right, np.zeros(m)]) + right_in * u["inlet"])
            T = x[: slices * n]
            out[hour] = (rate @ x[-tubes:]) / rate.sum()
        else:
            T = off.solve(right)
    return time.perf_counter() - began, out


def main():
    case = load(sys.argv[1])
    parts = matrices(case)
    hours, short = len(case["series"]), case["globalHours"]
    rounds = [per_slice(case, *parts, hours) for _ in range(3)]
    seconds1, out1 = min(rounds, key=lambda found: found[0])
    rounds = [one_global(case, *parts, short) for _ in range(3)]
    seconds2, out2 = min(rounds, key=lambda found: found[0])
    clean = lambda values: [None if np.isnan(v) else float(v) for v in values]
    with open(sys.argv[2], "w") as file:
        json.dump(
            {
                "perSlice": seconds1 / hours / case["slices"],
                "oneGlobal": seconds2 / short / case["slices"],
                "outlets": clean(out1),
                "globalOutlets": clean(out2),
            },
            file,
        )


main()
