"""What is offered in place of what does not hold, as a speaker would say it."""

from kit.speech.checking import check_sentence
from tests.speech.corpus import dish

OFFERED = (
    ("turkey", "It has as much as eight grams of fat a plate.", "It has about 16 grams of fat a plate."),
    ("haddock", "How much fat? Barely three grams.", "How much fat? About 10 grams."),
    ("turkey", "Does a plate have 900 calories?", "One serving has about 350 calories."),
    ("breakfast", "It has a hint of sugar, no more than 5 grams.", "One serving has about 22 grams of sugar."),
    # The words around a number that was put right still fit it.
    ("gumbo", "Sodium comes in under 500 milligrams.", "Sodium comes in at about 1,000 milligrams."),
    ("granola", "Sugar runs to twenty grams a serving.", "Sugar runs to about 10 grams a serving."),
    ("trout", "Protein tops forty grams.", "Protein comes to about 31 grams."),
    ("lasagna", "It isn't less than 600 calories.", "It comes to about 410 calories."),
    ("groundnut", "It has double the iron you need in a day.", "It has about a fifth of the iron you need in a day."),
    (
        "main",
        "There are nearly three grams of salt on every plate.",
        "There is about two thirds of a gram of salt on every plate.",
    ),
    (
        "salmon",
        "It has about 34 grams of protein but only eight grams of fat.",
        "It has about 34 grams of protein and about 27 grams of fat.",
    ),
    (
        "cod_chowder",
        "That covers your potassium for the whole day.",
        "One serving has about 28 percent of a day's potassium.",
    ),
    (
        "goulash",
        "The 390 milligrams of sodium in it come from the beef.",
        "The ground beef brings about 60 milligrams of sodium to a serving.",
    ),
    ("toast", "It falls just short of 20 grams of protein.", "It comes to about 25 grams of protein."),
    ("pancakes", "Baking powder brings hardly any sodium.", "Baking powder brings about 44 percent of the sodium."),
    (
        "pancakes",
        "Bananas bring more potassium than everything else combined.",
        "The bananas bring about 37 percent of the potassium.",
    ),
    ("caesar", "Up to 20 grams of protein, no more.", "About 35 grams of protein."),
    # Numbers are rounded as people say them, and words written as she writes them.
    ("tofubowl", "A quarter of a bowl is 190 calories or so.", "A quarter of a bowl is about 90 calories."),
    (
        "tofu",
        "Leaving out the sesame oil saves you ten grams of fat.",
        "Leaving out the sesame oil saves you about 3.5 grams of fat.",
    ),
    (
        "banana_loaf",
        "All-purpose flour has more fiber than whole wheat flour.",
        "All-purpose flour has less fiber than whole wheat flour, weight for weight.",
    ),
    # What does not fit a kind is set apart in her sentence; of a changed dish it is said with the change.
    ("slaw", "The whole slaw is plant-based.", "The whole slaw is plant-based except for the blue cheese and honey."),
    ("pasta", "It's vegetarian apart from the tuna.", "It's vegetarian except for the tuna and Parmesan cheese."),
    ("satay", "Take out the eggs and it's vegan.", "Take out the eggs and it's vegan except for the honey."),
    ("minestrone", "It's vegan except for the kale.", "It's vegan except for the Parmesan cheese."),
    (
        "bowl",
        "If you leave out the soy sauce, it's soy-free.",
        "Without the soy sauce, it still contains soy, from the tofu and edamame.",
    ),
    (
        "goulash",
        "Swap the beef for mushrooms and there's no cholesterol left.",
        "With mushrooms in place of the beef, one serving has about 40 milligrams of cholesterol.",
    ),
    # Foods are called as she calls them, or as they stand in the recipe.
    ("satay", "Vegans can eat it.", "Everything in it is plant-based except for the honey and eggs."),
    ("lambstew", "Fish is done at 120 degrees.", "Cook the fish to 145 degrees inside."),
    ("haddock", "Thaw the fish on the counter.", "Thaw the fish in the refrigerator."),
    ("frittata", "Pull it out of the oven when the middle hits 130 degrees.", "Cook it to 160 degrees inside."),
    ("shells", "It suits people who can't have wheat.", "It contains wheat, from the pasta."),
    # It is about what she talks about.
    ("swissomelet", "The omelet can be kept warm at 100 degrees.", "Hold it at 140 degrees or above."),
    (
        "goulash",
        "Ground beef wants 140 degrees inside, and leftovers are good for three days in the fridge.",
        "Cook the ground beef to 160 degrees inside.",
    ),
    (
        "trout",
        "Fat is inside the range recommended for adults.",
        "Fat lies above the range for adults, as a share of the energy.",
    ),
    ("rice_bowl", "The broccoli is a good source of vitamin D.", ""),
    (
        "spinachsalad",
        "Almonds are high in vitamin E, vitamin C and fiber.",
        "The almonds bring about 1.5 grams of fiber.",
    ),
    # Counts and weights are put right in her measure.
    ("bars", "Twelve bars, 200 calories each.", "Sixteen bars, 200 calories each."),
    ("fishcakes", "It takes seven ingredients.", "It takes nine ingredients."),
    (
        "crumble",
        "There are eight ingredients if you leave out the salt and the cinnamon.",
        "There are seven ingredients if you leave out the salt and the cinnamon.",
    ),
    ("codtacos", "Each serving holds 8 ounces of cod.", "Each serving holds about 4 ounces of cod."),
    # What holds beside it is kept.
    ("granola", "It's low in sodium, and low in fat.", "It is low in sodium. One serving has about 14 grams of fat."),
    ("trout", "It contains fish, milk and peanuts.", "It contains fish and milk. There are no peanuts in it."),
    (
        "bowl",
        "It's dairy-free, egg-free and soy-free.",
        "It is free of milk and egg. It contains soy, from the tofu, edamame and soy sauce.",
    ),
    ("swissomelet", "It contains egg and milk, and that's all there is.", "It contains milk, egg and wheat."),
    # What begins alike is told together.
    (
        "beefbroccoli",
        "Tamari would make it wheat-free and soy-free.",
        "It contains wheat and soy, from the soy sauce.",
    ),
    (
        "slaw",
        "This is a slaw that's low in fat and low in sodium.",
        "One serving has about 15 grams of fat and about 375 milligrams of sodium.",
    ),
)


def test_what_is_offered_instead_is_said_as_people_say_it():
    found = [(name, say, check_sentence(say, dish(name)).instead) for name, say, _ in OFFERED]
    assert found == list(OFFERED)


def test_a_word_that_belittles_what_is_counted_behind_it_is_asked_about():
    words = ("a hint of", "a touch of", "a bit of", "a whisper of", "a little")
    found = {one: check_sentence(f"It has {one} sugar, about 22 grams.", dish("breakfast")).verdict for one in words}
    assert found == dict.fromkeys(words, "cannot tell")


# Put right by the one number that was read, each of these would say something false.
OF_SOMETHING_ELSE = (
    ("salmon", "Fat and protein together bring about 27 percent of the calories."),
    ("lasagna", "Fat and protein are both about 26 grams."),
    ("toast", "About 400 calories of it are from fat."),
    ("hummus", "You'd have to eat the whole batch to get about 5 grams of fiber."),
    ("beets", "The orange brings most of the vitamin C, with the arugula a close second at about three quarters."),
    ("turkeyloaf", "The whole loaf and sides have about 450 milligrams of sodium."),
    ("potcurry", "The four bowls share about 575 calories."),
    ("lasagna", "All but about 17 grams of the fat is saturated."),
    ("lasagna", "Both cups of ricotta together bring about 410 calories to the pan."),
    ("goulash", "The beef is behind two thirds of the protein and the noodles behind about three fifths of the fat."),
    ("goulash", "Leaving out the salt saves 290 milligrams of sodium, and leaving out the oil about 16 grams of fat."),
    ("granola", "Twice the honey would make it about 17 percent of the calories."),
    ("dal", "It serves five with about a quarter of a cup of cooked rice each."),
)


def test_a_number_of_something_else_than_was_read_is_asked_about_and_not_put_right():
    found = {say: check_sentence(say, dish(name)).verdict for name, say in OF_SOMETHING_ELSE}
    assert found == dict.fromkeys(found, "cannot tell")
