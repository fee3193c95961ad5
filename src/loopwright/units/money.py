"""Amounts of money as whole minor units of one currency.

Rounding is half-up (a half goes away from zero), stated wherever it happens. Currency codes are those of
ISO 4217. Numbers of decimals: from memory of ISO 4217; 2 where the table is silent.
"""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Self

from loopwright.units.errors import BadInput, MixedCurrencies, UnreadableQuantity
from loopwright.units.fraction import MINUS, read_number, round_half_up

__all__ = ["Money", "currency_decimals", "read_money"]

_USUAL_DECIMALS = 2
_DECIMALS = {
    **dict.fromkeys(("CLP", "ISK", "JPY", "KRW", "PYG", "UGX", "VND", "XAF", "XOF", "XPF"), 0),
    **dict.fromkeys(("AUD", "CAD", "CHF", "DKK", "EUR", "GBP", "NOK", "NZD", "SEK", "USD"), 2),
    **dict.fromkeys(("BHD", "JOD", "KWD", "OMR", "TND"), 3),
}
_WANTED = "an amount with its currency code, such as 12.50 NZD"
_CODE_LENGTH = 3


def currency_decimals(currency: str) -> int:
    """How many decimals the currency has: 2 for NZD, 0 for JPY, 3 for KWD (ISO 4217).

    Raises:
        BadInput: not a code of three capital letters.
    """
    if not (len(currency) == _CODE_LENGTH and currency.isascii() and currency.isalpha() and currency.isupper()):
        raise BadInput(currency, "a currency code of three capital letters, such as NZD")
    return _DECIMALS.get(currency, _USUAL_DECIMALS)


@dataclass(frozen=True, slots=True)
class Money:
    """An exact amount in one currency.

    Args:
        minor: whole minor units, such as cents; negative for a refund.
        currency: the ISO 4217 code.

    >>> Money.of("12.50", "NZD") + Money(250, "NZD")
    Money(minor=1500, currency='NZD')
    """

    minor: int
    currency: str

    def __post_init__(self) -> None:
        """Check the code; a float would lose cents, so `minor` has to be an int."""
        _check_type(self.minor, int)
        currency_decimals(self.currency)

    @classmethod
    def of(cls, amount: Decimal | str | int, currency: str) -> Self:
        """The amount given in whole currency units, rounded half-up to the minor unit.

        Args:
            amount: such as `Decimal("12.50")`, `"12.50"` (a plain decimal) or `12`; a float is refused.
            currency: the ISO 4217 code.

        >>> Money.of("2.675", "EUR")
        Money(minor=268, currency='EUR')
        """
        _check_type(amount, Decimal, str, int)
        try:
            exact = Fraction(Decimal(amount))
        except (ArithmeticError, ValueError) as fault:
            raise BadInput(str(amount), "an amount such as 12.50") from fault
        return cls(round_half_up(exact * 10 ** currency_decimals(currency)), currency)

    @property
    def amount(self) -> Decimal:
        """The amount in whole currency units, with all decimals of the currency, exact."""
        digits = tuple(int(digit) for digit in str(abs(self.minor)))
        return Decimal((int(self.minor < 0), digits, -currency_decimals(self.currency)))

    def __add__(self, other: Self) -> Self:
        """The sum within one currency."""
        return type(self)(self.minor + self._same(other), self.currency)

    def __sub__(self, other: Self) -> Self:
        """The difference within one currency."""
        return type(self)(self.minor - self._same(other), self.currency)

    def __neg__(self) -> Self:
        """The same amount the other way."""
        return type(self)(-self.minor, self.currency)

    def __mul__(self, count: int) -> Self:
        """So many of it; for shares and rates use `times`, which says how it rounds."""
        _check_type(count, int)
        return type(self)(self.minor * count, self.currency)

    __rmul__ = __mul__

    def __lt__(self, other: Self) -> bool:
        """Less, within one currency."""
        return self.minor < self._same(other)

    def __le__(self, other: Self) -> bool:
        """Less or equal, within one currency."""
        return self.minor <= self._same(other)

    def times(self, factor: Fraction | Decimal | int) -> Self:
        """The amount times an exact factor, rounded half-up to the minor unit.

        >>> Money.of("11.90", "EUR").times(Fraction(100, 119))
        Money(minor=1000, currency='EUR')
        """
        return type(self)(round_half_up(self.minor * _exact(factor)), self.currency)

    def converted(self, rate: Decimal | Fraction, currency: str) -> Self:
        """The amount in another currency, rounded half-up to that currency's minor unit.

        Args:
            rate: units of `currency` for one unit of this one, above zero.
            currency: the ISO 4217 code to convert into.

        >>> Money.of("156.40", "EUR").converted(Decimal("0.86"), "GBP")
        Money(minor=13450, currency='GBP')
        """
        exact = _exact(rate)
        if exact <= 0:
            raise BadInput(str(rate), "an exchange rate above zero")
        shift = Fraction(10) ** (currency_decimals(currency) - currency_decimals(self.currency))
        return type(self)(round_half_up(self.minor * exact * shift), currency)

    def _same(self, other: "Money") -> int:
        """The other's minor units, once it is sure that both are in one currency."""
        _check_type(other, Money)
        if other.currency != self.currency:
            raise MixedCurrencies(self.currency, other.currency)
        return other.minor


def read_money(text: str, *, negative: bool = False) -> Money:
    """An amount with its currency code before or behind: `12.50 NZD`, `NZD 12.50`, `1,234.50 nzd`.

    A currency sign is refused, because $ is the sign of a score of currencies. So is an amount finer than the
    currency's minor unit. The number is read as `read_number` says: in `1,234 NZD` the comma marks thousands.

    Args:
        text: what was written.
        negative: whether a leading minus is accepted.

    Raises:
        UnreadableQuantity: no amount, no code, a sign, a negative amount, too many decimals.

    >>> read_money("NZD 12.50")
    Money(minor=1250, currency='NZD')
    """
    written = text.strip()
    code, number = written[:_CODE_LENGTH], written[_CODE_LENGTH:]
    if not _is_code(code):
        code, number = written[-_CODE_LENGTH:], written[:-_CODE_LENGTH]
    if not _is_code(code):
        signed = any(not (c.isalnum() or c.isspace() or c in f".,+-/⁄{MINUS}") for c in written)
        raise UnreadableQuantity(text, _WANTED, hint="a sign such as $ is not enough" if signed else "which currency?")
    currency = code.upper()
    try:
        value = read_number(number)
    except UnreadableQuantity as fault:
        raise UnreadableQuantity(text, _WANTED, hint=fault.hint) from fault
    minor = value * 10 ** currency_decimals(currency)
    if minor.denominator != 1:
        raise UnreadableQuantity(text, _WANTED, hint=f"{currency} has {currency_decimals(currency)} decimals")
    if minor < 0 and not negative:
        raise UnreadableQuantity(text, _WANTED, hint="it cannot be negative")
    return Money(int(minor), currency)


def _is_code(text: str) -> bool:
    return len(text) == _CODE_LENGTH and text.isascii() and text.isalpha()


def _exact(factor: Fraction | Decimal | int) -> Fraction:
    """The exact value of a factor; a float is refused because its decimals are not what was written."""
    _check_type(factor, Fraction, Decimal, int)
    try:
        return Fraction(factor)
    except (ArithmeticError, ValueError) as fault:
        raise BadInput(str(factor), "a finite factor") from fault


def _check_type(value: object, *wanted: type) -> None:
    """Refuse what is of no wanted type; True and False are no numbers here, and floats are never wanted."""
    if not isinstance(value, wanted) or isinstance(value, bool):
        names = " or ".join(kind.__name__ for kind in wanted)
        raise TypeError(f"wanted {names}, not {type(value).__name__}")
