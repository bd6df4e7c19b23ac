"""The claims of how much there is: amounts, and shares of a day, of the dish and of the energy."""

from kit.speech.figures.amounts import AmountClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim

AMOUNTS = (AmountClaim, DayShareClaim)
COUNTED = (AmountClaim, DayShareClaim, DishShareClaim, EnergyShareClaim)
