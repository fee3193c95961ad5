from typing import Any

import django.utils.timezone
from django.db import migrations, models

from loopwright.season.cupboard_search import folded


def _fold(apps: Any, schema_editor: Any) -> None:
    """Lots and yarns are found by more than their name from now on."""
    for model, fields in (("LotRow", ("dye_lot", "kept_in", "note")), ("YarnRow", ("fibres", "note"))):
        manager = apps.get_model("store", model)._default_manager
        rows = []
        for row in manager.iterator():
            texts = [row.name]
            for field in fields:
                value = row.facts.get(field, "")
                texts += [pair["fibre"] for pair in value] if isinstance(value, list) else [value]
            row.folded = folded("\n".join(texts))
            rows.append(row)
        manager.bulk_update(rows, ["folded"], batch_size=500)


class Migration(migrations.Migration):
    dependencies = [("store", "0001_first_tables")]

    operations = [
        migrations.CreateModel(
            name="LotPhotoRow",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("digest", models.CharField(max_length=64, unique=True)),
                ("width", models.PositiveIntegerField()),
                ("height", models.PositiveIntegerField()),
                ("picture", models.BinaryField()),
                ("small", models.BinaryField()),
                ("kept_at", models.DateTimeField(default=django.utils.timezone.now)),
            ],
        ),
        migrations.AddField(model_name="seasonrow", name="photos", field=models.JSONField(default=dict)),
        migrations.RunPython(_fold, migrations.RunPython.noop),
    ]
