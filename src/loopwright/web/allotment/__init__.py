"""Which lot knits which section, and what becomes of it when she gives one to another lot."""
