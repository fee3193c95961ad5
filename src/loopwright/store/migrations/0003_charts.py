import django.db.models.deletion
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [("store", "0002_cupboard")]

    operations = [
        migrations.CreateModel(
            name="ChartRow",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("key", models.CharField(max_length=60)),
                ("position", models.PositiveIntegerField()),
                ("name", models.TextField(blank=True)),
                ("folded", models.TextField(blank=True)),
                ("facts", models.JSONField(default=dict)),
                (
                    "season",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE, related_name="+", to="store.seasonrow"
                    ),
                ),
            ],
            options={
                "ordering": ["position"],
                "abstract": False,
                "constraints": [models.UniqueConstraint(fields=("season", "key"), name="chartrow_key_once")],
            },
        ),
    ]
