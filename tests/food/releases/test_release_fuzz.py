"""Slips in the files of a release: it comes in, or is told in sentences, and then the store before it stands."""

from random import Random

import numpy as np
from made_releases import small_release, write
from slips import TRIES, mutated

from kit.errors import KitError
from kit.food.releases.release import Store, import_release

PIECES = [
    *('"nan","nan","nan"', '"12","11","1008","1e999","4","49"', '"12","11","1003","-1e308"', ",,,,,,", '"', "\x00"),
    *('"9"' * 50, '"1","11","1","1e308","1000","cup","","1e-308","1"', "id;fdc_id;nutrient_id", "é" * 2000, ""),
]


def test_any_slip_in_a_release_is_read_or_told_and_the_store_before_it_stands(tmp_path):
    chance = Random("slips of releases")
    whole = small_release()
    good = tmp_path / "good.sqlite"
    import_release(write(tmp_path / "good", whole), good)
    before = good.read_bytes()
    for number in range(TRIES):
        name = chance.choice(sorted(whole))
        folder = write(tmp_path / f"slip-{number % 10}", {**whole, name: mutated(whole[name], chance, PIECES)})
        path = tmp_path / "slip.sqlite"
        path.write_bytes(before)
        try:
            import_release(folder, path)
        except KitError:  # told
            assert path.read_bytes() == before
            continue
        store = Store(path)
        assert len(store) > 0
        for key in ("fdc-11", "fdc-12", "fdc-15"):
            if key in store:
                values = np.array(store.food(key).per_100g)
                assert np.isfinite(values[~np.isnan(values)]).all()
