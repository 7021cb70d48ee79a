-- Once, as superuser:  psql -v owner_password=… -v app_password=… -f roles.sql
-- One role owns the schema and runs migrations, one serves requests and owns nothing. The third is taken on by the second where it
-- changes a population or computes for everybody; nobody signs in by it.
create role demebook_owner login nosuperuser nobypassrls password :'owner_password';
create role demebook_app login nosuperuser nobypassrls password :'app_password';
alter role demebook_app noinherit;
create role demebook_register nologin nosuperuser nobypassrls;
grant demebook_register to demebook_app;
create database demebook owner demebook_owner encoding 'UTF8' template template0;
\connect demebook
revoke create on schema public from public;
revoke all on database demebook from public;
grant connect on database demebook to demebook_app;
create schema demebook authorization demebook_owner;
grant usage on schema demebook to demebook_app;
alter role demebook_owner in database demebook set search_path = demebook;
alter role demebook_app in database demebook set search_path = demebook;
